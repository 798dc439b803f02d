import { z } from "zod";

/** Longest entry, as characters of JSON. */
export const LONGEST_ENTRY = 20_000;

/** Id of an entry or a case: made on the device, passed in. */
const MadeId = z
  .string()
  .regex(/^[A-Za-z0-9][A-Za-z0-9_-]*$/, "use letters, digits, hyphens and underscores")
  .max(64);

/** Id of a finding, check, suspect or set-up: words of the knowledge joined by hyphens, ":" and "@". */
export const KnowledgeId = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*([:@][a-z0-9]+(-[a-z0-9]+)*)*$/, "use an id such as play-3-9@front-left")
  .max(200);

const Short = z.string().max(200);
const Long = z.string().min(1).max(4000);
const Minutes = z.number().min(0).max(100_000);

/**
 * Moment in ISO 8601, UTC, to the millisecond: 2026-03-01T09:30:00.000Z.
 *
 * One length only, so that text order is time order.
 */
const At = z.iso.datetime({ precision: 3, error: "give the time in UTC as 2026-03-01T09:30:00.000Z" });

/**
 * What the customer gave by the form of a link. `seal` is the server's proof that its own form wrote the entry: nobody
 * else can make one.
 */
const byForm = {
  from: z.literal("customer").exactOptional(),
  /** Id of the link that the form stood behind. */
  link: MadeId.exactOptional(),
  seal: z.string().max(100).exactOptional(),
};

const head = { id: MadeId, caseId: MadeId, at: At, by: z.string().min(1).max(80) };

/** The named fields only: a loose schema's index signature would let every misspelt field through. */
type Named<T> = T extends unknown ? { readonly [K in keyof T as string extends K ? never : K]: T[K] } : never;

const Field = z
  .string()
  .regex(/^[a-zA-Z]+$/, "use a field of the car")
  .max(40);
const FieldValue = z.union([z.string().max(80), z.number(), z.null()]);

/** The car as it was told, nested by the paths that the knowledge asks for; readCar makes sense of it. */
export const CaseCar = z
  .record(Field, z.union([FieldValue, z.record(Field, FieldValue)]))
  .refine((car) => Object.keys(car).length <= 40, "at most 40 fields");
export type CaseCar = z.infer<typeof CaseCar>;

export const Opened = z.looseObject({
  ...head,
  kind: z.literal("opened"),
  /** SHA-256 (or version) of the release that the case is weighed with. */
  release: z.string().min(1).max(100),
  knowledgeVersion: z.string().max(40).exactOptional(),
  car: CaseCar,
  customer: Short,
  vehicle: Short,
  plate: z.string().max(20).exactOptional(),
  /** True for demonstration and training: nobody's real car. */
  invented: z.boolean().exactOptional(),
});

/** The case is weighed with another release from here on. */
export const ReleaseChanged = z.looseObject({
  ...head,
  kind: z.literal("release-changed"),
  release: z.string().min(1).max(100),
  knowledgeVersion: z.string().max(40).exactOptional(),
});

export const CarChanged = z.looseObject({ ...head, kind: z.literal("car-changed"), car: CaseCar });

export const Told = z.looseObject({ ...head, ...byForm, kind: z.literal("told"), text: Long });

/**
 * One finding answered. `how` says whether it was told or checked by hand; `by`, as in every entry, who wrote it down.
 */
export const Answered = z.looseObject({
  ...head,
  ...byForm,
  kind: z.literal("answered"),
  finding: KnowledgeId,
  state: z.enum(["present", "absent", "unknown"]),
  level: KnowledgeId.exactOptional(),
  /** As measured, in the unit of the observation. */
  value: z.number().exactOptional(),
  /** Diameter of the circle that it was measured on. */
  circleMm: z.number().positive().exactOptional(),
  how: z.enum(["report", "check"]),
  /** The customer's words that it was read from. */
  words: z.string().max(1000).exactOptional(),
  /** The check that settled it. */
  check: KnowledgeId.exactOptional(),
  /** The question as the customer read it, and the answer that was picked. */
  asked: z
    .looseObject({ question: z.string().max(400), text: z.string().max(1000), choice: z.string().max(400) })
    .exactOptional(),
});

/** A photo that the server keeps beside the case under the id `photo`, width and height in pixels. */
export const Photo = z.looseObject({
  ...head,
  ...byForm,
  kind: z.literal("photo"),
  photo: MadeId,
  width: z.number().int().positive(),
  height: z.number().int().positive(),
  caption: Short.exactOptional(),
});

/** A proposal read from free text that a person turned down. */
export const Refused = z.looseObject({
  ...head,
  kind: z.literal("refused"),
  finding: KnowledgeId,
  words: z.string().max(1000),
});

export const SetUpChanged = z.looseObject({ ...head, kind: z.literal("set-up"), setUp: KnowledgeId });

export const NotPossible = z.looseObject({
  ...head,
  kind: z.literal("not-possible"),
  check: KnowledgeId,
  reason: Short,
});

export const CautionsRead = z.looseObject({ ...head, kind: z.literal("cautions-read"), check: KnowledgeId });

/** A part that is younger than the car, or is known to be the first (`atKm` 0); one of `atKm` and `yearsAgo` is given. */
export const Fitted = z.looseObject({
  ...head,
  kind: z.literal("fitted"),
  part: KnowledgeId,
  /** Left out: at every place of the part. */
  place: KnowledgeId.exactOptional(),
  /** Odometer when it was fitted. */
  atKm: z.number().min(0).max(10_000_000).exactOptional(),
  yearsAgo: z.number().min(0).max(200).exactOptional(),
});

/** What turns at which rate, and the frequencies that were measured; a later one replaces it whole. */
export const Turning = z.looseObject({
  ...head,
  kind: z.literal("turning"),
  /** Size as printed on the tyre. */
  tyre: Short.exactOptional(),
  circumferenceMm: z.number().positive().exactOptional(),
  finalDrive: z.number().positive().exactOptional(),
  cylinders: z.number().int().min(1).max(16).exactOptional(),
  measured: z
    .array(
      z.looseObject({
        hz: z.number().positive(),
        speedKmh: z.number().positive(),
        gearRatio: z.number().positive().exactOptional(),
        rpm: z.number().positive().exactOptional(),
        /** How strong it was, by a sensor. Units: m/s^2. */
        amplitude: z.number().positive().exactOptional(),
      }),
    )
    .max(20)
    .readonly(),
});

export const Note = z.looseObject({ ...head, kind: z.literal("note"), text: Long });

/** The suspects that a person names as the cause, and the findings that prove it. */
export const Verdict = z.looseObject({
  ...head,
  kind: z.literal("verdict"),
  suspects: z.array(KnowledgeId).max(20).readonly(),
  proof: z.array(KnowledgeId).max(100).readonly(),
  note: Long.exactOptional(),
});

/**
 * What the customer was advised before anybody had seen the car, as a person decided it.
 *
 * Levels are those of the knowledge's advice; minutes are of the whole visit: half of such visits take `p50` at most, nine
 * of ten `p90`.
 */
export const Advised = z.looseObject({
  ...head,
  kind: z.literal("advised"),
  level: KnowledgeId,
  /** What was said about driving. */
  said: Long,
  p50: Minutes.exactOptional(),
  p90: Minutes.exactOptional(),
  /** Parts to have ready, each `part@place`. */
  parts: z.array(KnowledgeId).max(50).readonly(),
  note: Long.exactOptional(),
});

/** Who has the case from here on; without `to`, nobody. */
export const Assigned = z.looseObject({
  ...head,
  kind: z.literal("assigned"),
  /** Name, as it is to be shown. */
  to: z.string().min(1).max(80).exactOptional(),
  /** The account of that name, where there is one. */
  account: MadeId.exactOptional(),
});

export const Reopened = z.looseObject({ ...head, kind: z.literal("reopened") });

/** Takes back the effect of another entry; may itself be retracted. */
export const Retracted = z.looseObject({
  ...head,
  ...byForm,
  kind: z.literal("retracted"),
  entry: MadeId,
});

const KNOWN = [
  Opened,
  ReleaseChanged,
  CarChanged,
  Told,
  Answered,
  Photo,
  Refused,
  SetUpChanged,
  NotPossible,
  CautionsRead,
  Fitted,
  Turning,
  Note,
  Verdict,
  Advised,
  Assigned,
  Reopened,
  Retracted,
] as const;

/** Every kind of entry that this version understands. */
export const ENTRY_KINDS: ReadonlySet<string> = new Set(KNOWN.map((schema) => schema.shape.kind.value));

/** Fields that a newer version may have added are kept; the fold reads only those named here. */
export const KnownEntry = z.discriminatedUnion("kind", KNOWN);
export type KnownEntry = Named<z.infer<typeof KnownEntry>>;

/** An entry of a newer version: kept and passed on, its effect not understood. */
export const UnknownEntry = z.looseObject({
  ...head,
  kind: z
    .string()
    .min(1)
    .max(40)
    .refine((kind) => !ENTRY_KINDS.has(kind), "this kind is known: follow its form"),
});
export type UnknownEntry = Named<z.infer<typeof UnknownEntry>>;

export type Entry = KnownEntry | UnknownEntry;
export type EntryOf<K extends KnownEntry["kind"]> = Extract<KnownEntry, { kind: K }>;

/** Whether this version understands the entry's kind. */
export function isKnownEntry(entry: Entry): entry is KnownEntry {
  return ENTRY_KINDS.has(entry.kind);
}

/** Whether the customer gave it by a form. */
export function isByForm(entry: Entry): boolean {
  return "from" in entry && entry.from === "customer";
}
