import { type CarInput, readCar } from "../car/car.ts";
import {
  type Answer,
  groundCar,
  parseFinding,
  rankingRows,
  rowName,
  suspectName,
  weigh,
} from "../engine/index.ts";
import type { RankingRow } from "../engine/index.ts";
import { CornerwiseError } from "../errors.ts";
import type { Knowledge } from "../knowledge/schema/compiled.ts";

/** A case whose answer is known. */
export interface WorkedCaseInput {
  readonly id: string;
  readonly title: string;
  readonly car: CarInput;
  readonly findings: readonly {
    readonly id: string;
    readonly state: "present" | "absent";
    readonly level?: string | undefined;
    readonly by: "report" | "check";
  }[];
  readonly truth: { readonly fault: string; readonly place: string };
}

/** A line of the ranking of a worked case. */
export interface PlayedLine {
  /** `fault@place`; a wider place while its sides are not told apart. */
  readonly id: string;
  readonly name: string;
  readonly probability: number;
}

/** What one version of the knowledge makes of a worked case. */
export interface PlayedCase {
  readonly leader: PlayedLine;
  /** The line with the true part: 1 is first; 0 and no chance when the version does not hold the fault on that car. */
  readonly truth: PlayedLine & { readonly rank: number };
  /** Findings and fields of the car that the version does not know; it weighed the rest. */
  readonly leftOut: readonly string[];
}

/**
 * Weigh a worked case with one version of the knowledge.
 *
 * Errors  "impossible-evidence" when no cause of that version can give the findings, "empty-model" when it has no fault for the car.
 */
export function playWorkedCase(knowledge: Knowledge, worked: WorkedCaseInput): PlayedCase {
  const leftOut: string[] = [];
  const answers: Answer[] = [];
  const contexts: string[] = [];
  for (const { id, state, level, by } of worked.findings) {
    const known = knownFinding(knowledge, id, level);
    if (known === undefined) leftOut.push(id);
    else {
      answers.push({ finding: id, state, level, by });
      if (known === "context" && state === "present") contexts.push(id);
    }
  }
  const { car, unknown } = knownCar(knowledge, worked.car);
  const grounded = groundCar(knowledge, car, contexts);
  const rows = rankingRows(grounded, weigh(grounded, answers));
  const { fault, place } = worked.truth;
  const at = rows.findIndex((row) =>
    row.suspects.some(({ suspect }) => suspect.fault === fault && suspect.place === place),
  );
  const [first] = rows as [RankingRow, ...RankingRow[]];
  const row = rows[at];
  const part = knowledge.faults.find((record) => record.id === fault)?.part ?? fault;
  return {
    leader: line(knowledge, first),
    truth:
      row === undefined
        ? {
            id: `${fault}@${place}`,
            name: suspectName(knowledge, { fault, part, place }),
            probability: 0,
            rank: 0,
          }
        : { ...line(knowledge, row), rank: at + 1 },
    leftOut: [...leftOut, ...unknown],
  };
}

function line(knowledge: Knowledge, row: RankingRow): PlayedLine {
  return { id: row.id, name: rowName(knowledge, row), probability: row.explains };
}

/** Kind of a finding of this version; undefined when it does not hold it, or not that grade of it. */
function knownFinding(knowledge: Knowledge, id: string, level: string | undefined): string | undefined {
  try {
    const finding = parseFinding(knowledge, id);
    if (finding.kind !== "observation") return finding.kind;
    const { observation, place } = finding;
    if (place !== undefined && !observation.places.includes(place)) return undefined;
    return level === undefined || observation.levels.includes(level) ? finding.kind : undefined;
  } catch (error) {
    if (error instanceof CornerwiseError && error.code === "unknown-id") return undefined;
    throw error;
  }
}

/** The fields of the car that this version can read, and the names of the others. */
function knownCar(knowledge: Knowledge, input: CarInput): { car: CarInput; unknown: string[] } {
  const car: Record<string, unknown> = {};
  const unknown: string[] = [];
  for (const [key, value] of Object.entries(input)) {
    try {
      const { unused } = readCar(knowledge, { [key]: value });
      unknown.push(...unused.map((path) => `car.${path}`));
      car[key] = value;
    } catch (error) {
      if (!(error instanceof CornerwiseError) || error.code !== "bad-request") throw error;
      unknown.push(`car.${key}`);
    }
  }
  return { car, unknown };
}
