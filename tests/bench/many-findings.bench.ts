import { type Answer, type Grounded, groundCar, weigh, weighing } from "../../lib/engine/index.ts";
import { pick, seededUniform } from "../support/random-models.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { milliseconds, quantile, table } from "./timing.ts";

const SEEDS = 10;
/** Lines of the ranking that anyone reads. */
const READ = 20;

/** Weighing far more present findings than any car has, spread over the car or crowded around one corner. */
export function manyFindings(): string {
  const knowledge = shippedKnowledge();
  const grounded = groundCar(knowledge, {
    drive: "front",
    front: { layout: "strut" },
    odometerKm: 140_000,
  });
  const rows = [false, true].flatMap((corner) =>
    [20, 31, 45, 60, 100, 150, 200, 300].map((count) => row(grounded, count, corner)),
  );
  return table(
    [
      "present",
      "where",
      "weighing med ms",
      "with bounds med ms",
      "max",
      "cut, of 10",
      `width of bounds, first ${READ}, med`,
    ],
    rows,
  );
}

function row(grounded: Grounded, count: number, corner: boolean): (string | number)[] {
  const alone: number[] = [];
  const shown: number[] = [];
  const widths: number[] = [];
  // The first two warm up.
  for (let seed = -1; seed <= SEEDS; seed++) {
    const answers = presentAnswers(grounded, count, corner, seed + 2);
    const ahead = milliseconds(() => weighing(grounded, answers));
    let weighed = weigh(grounded, []);
    const whole = milliseconds(() => {
      weighed = weigh(grounded, answers);
    });
    if (seed < 1) continue;
    alone.push(ahead);
    shown.push(whole);
    if (!weighed.approximate) continue;
    const first = weighed.ranking.slice(0, READ);
    widths.push(
      first.reduce((sum, { presentBounds: b }) => sum + (b === undefined ? 1 : b.high - b.low), 0) / READ,
    );
  }
  return [
    count,
    corner ? "one corner" : "anywhere",
    quantile(alone, 0.5),
    quantile(shown, 0.5),
    Math.max(...shown),
    widths.length,
    widths.length > 0 ? quantile(widths, 0.5) : "-",
  ];
}

function presentAnswers(grounded: Grounded, count: number, corner: boolean, seed: number): Answer[] {
  const nodes = [...grounded.nodes.keys()].filter((id) => !corner || /@front(-left)?$/.test(id));
  const complaint = grounded.knowledge.complaints[0]?.id ?? "";
  const seen = Array.from(
    pick(seededUniform(seed), nodes.length, count - 1),
    (k): Answer => ({ finding: nodes[k] ?? "", state: "present", by: "check" }),
  );
  return [{ finding: complaint, state: "present", by: "report" }, ...seen];
}
