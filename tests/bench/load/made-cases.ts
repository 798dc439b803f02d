import { createHash } from "node:crypto";
import type { Entry } from "../../../lib/case/entries.ts";
import { seededUniform } from "../../support/random-models.ts";

const SEED = 20_260_301;
const FIRST_DAY = Date.UTC(2023, 0, 9, 8);
/** Cases of a workshop over three years. */
const SPAN_MS = 3 * 365 * 86_400_000;

const FIRST_NAMES = ["Alma", "Bruno", "Carla", "Dario", "Edda", "Falk", "Gesa", "Hanno", "Ilka", "Jonte"];
const LAST_NAMES = ["Invent", "Madeup", "Nobody", "Fictive", "Sample", "Pretend", "Example", "Imagine"];
const BODIES = ["hatchback", "estate", "saloon", "van", "pick-up", "coupe", "minibus"];
const COLOURS = ["white", "grey", "blue", "silver", "black", "green"];
const PLACES = ["front-left", "front-right", "rear-left", "rear-right"];
const SUBJECTS = ["ball-joint", "wheel-bearing", "track-rod-end", "drop-link", "control-arm-bush"];
const TOLD =
  "It knocks over the speed bumps by the harbour, mostly when it is cold, and lately the wheel shakes a little at motorway speed too. Had new tyres in spring.";

/** Text that looks like an id made on a device, the same for the same words. */
export function madeId(words: string): string {
  const hex = createHash("sha256").update(words).digest("hex");
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-4${hex.slice(13, 16)}-a${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}

/** Id of the case of that number. */
export const caseIdOf = (number: number): string => madeId(`case ${number}`);

/** Which account, by its number, opened the case. */
export const ownerNumberOf = (number: number, accounts: number): number => number % accounts;

export interface MadeCase {
  readonly id: string;
  /** In the order in which they arrived. */
  readonly entries: readonly Entry[];
  readonly changedAt: string;
}

/** Most cases are short, one of twenty is long: from 3 to 60 entries. */
function lengthOf(uniform: () => number): number {
  return uniform() < 0.05 ? 13 + Math.floor(48 * uniform()) : 3 + Math.floor(10 * uniform());
}

/** A number plate of no country. */
const plateOf = (number: number): string => `HL ${String(number).padStart(6, "0")}`;

const oneOf = (uniform: () => number, list: readonly string[]): string =>
  list[Math.floor(uniform() * list.length)] ?? "";

/** The case of that number out of `count`: an invented one, always the same. */
export function madeCase(number: number, count: number): MadeCase {
  const uniform = seededUniform(SEED + number);
  const id = caseIdOf(number);
  let time = FIRST_DAY + Math.floor((SPAN_MS * number) / count);
  const head = () => {
    time += 5000 + Math.floor(90_000 * uniform());
    return { caseId: id, at: new Date(time).toISOString(), by: "technician" };
  };
  const entries: Entry[] = [
    {
      id: madeId(`${id} opened`),
      ...head(),
      kind: "opened",
      release: madeId("release"),
      knowledgeVersion: "1.2.0",
      car: {
        drive: "front",
        odometerKm: 20_000 + Math.floor(200_000 * uniform()),
        front: { layout: "strut" },
      },
      customer: `${oneOf(uniform, FIRST_NAMES)} ${oneOf(uniform, LAST_NAMES)}`,
      vehicle: `${oneOf(uniform, COLOURS)} ${oneOf(uniform, BODIES)}`,
      plate: plateOf(number),
      invented: true,
    },
    { id: madeId(`${id} told`), ...head(), kind: "told", text: TOLD },
  ];
  const length = lengthOf(uniform);
  const closed = uniform() < 0.9;
  while (entries.length < length - 1)
    entries.push({ ...head(), ...step(uniform, `${id} ${entries.length}`) });
  const last = `${oneOf(uniform, SUBJECTS)}-worn@${oneOf(uniform, PLACES)}`;
  entries.push(
    closed
      ? { id: madeId(`${id} end`), ...head(), kind: "verdict", suspects: [last], proof: [`play:${last}`] }
      : { id: madeId(`${id} end`), ...head(), kind: "note", text: "Waits for the ramp." },
  );
  return { id, entries, changedAt: new Date(time).toISOString() };
}

type Step = Omit<Extract<Entry, { kind: "answered" }>, "caseId" | "at" | "by">;

/** One answer at the car, as most entries of a case are. */
export function step(uniform: () => number, words: string): Step {
  const subject = oneOf(uniform, SUBJECTS);
  return {
    id: madeId(words),
    kind: "answered",
    finding: `${subject}-play@${oneOf(uniform, PLACES)}`,
    state: uniform() < 0.3 ? "present" : "absent",
    level: "clear",
    value: Math.round(100 * uniform()) / 10,
    how: "check",
    check: `${subject}-by-hand@${oneOf(uniform, PLACES)}`,
  };
}
