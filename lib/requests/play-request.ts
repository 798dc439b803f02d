import { z } from "zod";
import { readCar } from "../car/car.ts";
import { playDegrees, playMm } from "../car/free-play.ts";
import { playLimits } from "../car/play-limits.ts";
import { findingName } from "../engine/index.ts";
import { CornerwiseError } from "../errors.ts";
import type { Knowledge } from "../knowledge/schema/compiled.ts";
import { MM_PER_INCH } from "../maths/units.ts";
import { given } from "./given.ts";
import { parseRequest } from "./parse-request.ts";

const Diameter = z.strictObject({ value: z.number().positive(), unit: z.enum(["mm", "in"]) });

/** What `cornerwise play` reads. */
export const PlayRequest = z.strictObject({
  /** What was measured: an id that the error for an unknown one lists. */
  quantity: z.string().min(1).max(80),
  value: z.number().min(0),
  unit: z.enum(["mm", "in", "deg"]),
  /** Diameter of the circle measured on: steering wheel, tyre, rim. Needed for degrees. */
  circle: Diameter.nullish(),
  /** Nominal diameter of the rim, for rules that go by it. */
  rim: Diameter.nullish(),
  /** Such as US, US-MO, GB, EU; left out: every rule. */
  country: z
    .string()
    .regex(/^[A-Z]{2}(-[A-Z]{2,3})?$/, "use a code such as US, US-MO, GB or EU")
    .nullish(),
  /** Where it was measured, for the finding. */
  place: z.string().max(80).nullish(),
  car: z.record(z.string(), z.json()).nullish(),
});
export type PlayRequest = z.infer<typeof PlayRequest>;

const Movement = { mm: z.number(), in: z.number(), deg: z.number().optional() };

/** What `cornerwise play` answers. */
export const PlayAnswer = z.strictObject({
  release: z.string(),
  quantity: z.string(),
  name: z.string(),
  how: z.string(),
  ...Movement,
  limits: z.array(
    z.strictObject({
      id: z.string(),
      rule: z.string(),
      country: z.string(),
      applies: z.string(),
      note: z.string().optional(),
      standing: z.enum(["under", "at", "over", "unknown"]),
      /** The most that the rule allows. */
      most: z.strictObject(Movement).optional(),
      /** Of a depth or thickness: the least that must be left. */
      least: z.strictObject(Movement).optional(),
      /** Diameter that the rule goes by and that was not given. */
      needs: z.enum(["circle", "rim"]).optional(),
    }),
  ),
  /** Ready for the findings of a weigh request. */
  finding: z.strictObject({ id: z.string(), value: z.number() }).optional(),
  findingName: z.string().optional(),
  decides: z.string(),
});
export type PlayAnswer = z.infer<typeof PlayAnswer>;

/**
 * Answers one request: a movement in mm, inches and degrees, or a depth in mm and inches, beside every published limit of it.
 *
 * Errors: `bad-request` naming the field and how to mend it; `unknown-id` for a quantity or place that is not there.
 */
export function answerPlayRequest(knowledge: Knowledge, input: unknown): PlayAnswer {
  const request = parseRequest(PlayRequest, "play-request", input);
  const { quantities, decides } = knowledge.limits;
  const quantity = quantities.find(({ id }) => id === request.quantity);
  if (quantity === undefined) {
    const ids = quantities.map(({ id, name }) => `"${id}" (${name})`).join(", ");
    throw new CornerwiseError(
      "unknown-id",
      `quantity: there is no limit of "${request.quantity}". Use one of: ${ids}.`,
      { id: request.quantity },
    );
  }
  const { car } = readCar(knowledge, request.car ?? {});
  const circleMm = given(request.circle) ? inMm(request.circle) : undefined;
  const movement = (mm: number) => ({
    mm,
    in: mm / MM_PER_INCH,
    ...(circleMm === undefined || quantity.angle === undefined
      ? {}
      : { deg: playDegrees(mm, circleMm, quantity.angle) }),
  });
  const mm = measuredMm(request, circleMm, quantity);
  const standings = playLimits(
    knowledge,
    {
      quantity: quantity.id,
      mm,
      circleMm,
      rimMm: given(request.rim) ? inMm(request.rim) : undefined,
    },
    car,
    request.country ?? undefined,
  );
  return {
    release: knowledge.version,
    quantity: quantity.id,
    name: quantity.name,
    how: quantity.how,
    ...movement(mm),
    limits: standings.map(({ limit, mostMm, leastMm, standing, needs }) => ({
      id: limit.id,
      rule: limit.rule,
      country: limit.country,
      applies: limit.applies,
      ...(limit.note === undefined ? {} : { note: limit.note }),
      standing,
      ...(mostMm === undefined ? {} : { most: movement(mostMm) }),
      ...(leastMm === undefined ? {} : { least: movement(leastMm) }),
      ...(needs === undefined ? {} : { needs }),
    })),
    ...finding(knowledge, quantity.observation, request.place ?? undefined, mm),
    decides,
  };
}

function measuredMm(
  { value, unit }: PlayRequest,
  circleMm: number | undefined,
  { name, angle, circle }: Knowledge["limits"]["quantities"][number],
): number {
  if (unit !== "deg") return inMm({ value, unit });
  if (angle === undefined || circle === undefined)
    throw new CornerwiseError(
      "bad-request",
      `unit: ${name} is no movement and has no degrees; give it in "mm" or "in".`,
      { field: "unit" },
    );
  if (circleMm !== undefined) return playMm(value, circleMm, angle);
  throw new CornerwiseError(
    "bad-request",
    `circle is missing; a movement in degrees needs the diameter of ${circle}, such as {"value": 380, "unit": "mm"}.`,
    { field: "circle" },
  );
}

function inMm({ value, unit }: { value: number; unit: "mm" | "in" }): number {
  return unit === "in" ? value * MM_PER_INCH : value;
}

function finding(
  knowledge: Knowledge,
  observation: string | undefined,
  place: string | undefined,
  value: number,
): Pick<PlayAnswer, "finding" | "findingName"> {
  if (observation === undefined) return {};
  const id = place === undefined ? observation : `${observation}@${place}`;
  return { finding: { id, value }, findingName: findingName(knowledge, id) };
}
