import { z } from "zod";

/*
 * A statement of the Experience API as this program makes them, by IEEE 9274.1.1-2023; the numbers are those of its data part.
 * Stricter than the standard, which allows more kinds of actors and objects: what is not made here is refused.
 */

/** The version of the standard, in each statement and in the header of each request. */
export const XAPI_VERSION = "2.0.0";

/** An absolute IRI (RFC 3987): a scheme, then no blanks and none of the characters that must be escaped. */
const Iri = z.string().regex(/^[a-z][a-z0-9+.-]*:[^\s<>"{}|\\^`]+$/i, "give an absolute IRI");

/** Language tags (RFC 5646) and texts. */
const LanguageMap = z
  .record(z.string().regex(/^[a-z]{2,8}(-[a-z0-9]{1,8})*$/i, "give a language tag"), z.string())
  .refine((map) => Object.keys(map).length > 0, "give the text in one language at least");

const Extensions = z.record(Iri, z.json());

/** Agent: exactly one way to know whom is meant; here an account, never an address or a person's name beside it. */
const Agent = z.strictObject({
  objectType: z.literal("Agent"),
  account: z.strictObject({ homePage: z.url(), name: z.string().min(1) }),
});

const Verb = z.strictObject({ id: Iri, display: LanguageMap });

const Activity = z.strictObject({
  objectType: z.literal("Activity"),
  id: Iri,
  definition: z.strictObject({
    name: LanguageMap,
    description: LanguageMap.exactOptional(),
    type: Iri,
    interactionType: z
      .enum([
        "true-false",
        "choice",
        "fill-in",
        "long-fill-in",
        "matching",
        "performance",
        "sequencing",
        "likert",
        "numeric",
        "other",
      ])
      .exactOptional(),
  }),
});

/** Score: scaled within -1..1, raw within its own bounds, the lower one below the upper one. */
const Score = z
  .strictObject({ scaled: z.number().min(-1).max(1), raw: z.number(), min: z.number(), max: z.number() })
  .refine(({ min, max }) => min < max, "min must be below max")
  .refine(({ raw, min, max }) => raw >= min && raw <= max, "raw must lie between min and max");

const Result = z.strictObject({
  score: Score.exactOptional(),
  success: z.boolean().exactOptional(),
  completion: z.boolean().exactOptional(),
  response: z.string().exactOptional(),
  /** ISO 8601. */
  duration: z.iso.duration().exactOptional(),
  extensions: Extensions.exactOptional(),
});

const Context = z.strictObject({
  registration: z.uuid(),
  contextActivities: z
    .strictObject({
      parent: z.array(Activity).min(1).exactOptional(),
      grouping: z.array(Activity).min(1).exactOptional(),
    })
    .exactOptional(),
  /** Allowed beside an activity only. */
  platform: z.string().exactOptional(),
  language: z.string().exactOptional(),
});

export const Statement = z
  .strictObject({
    id: z.uuid(),
    actor: Agent,
    verb: Verb,
    object: Activity,
    result: Result.exactOptional(),
    context: Context,
    /** RFC 3339, UTC. */
    timestamp: z.iso.datetime(),
    version: z.literal(XAPI_VERSION),
  })
  .meta({ id: "XapiStatement" });
export type Statement = z.infer<typeof Statement>;
