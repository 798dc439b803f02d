import { z } from "zod";
import { KnownEntry, Opened, UnknownEntry } from "../../../lib/case/entries.ts";
import { parseEntry } from "../../../lib/case/parse-entry.ts";
import { CornerwiseError } from "../../../lib/errors.ts";
import { Cursor, lineOfText, Moment, textOfParagraphs, queryNumber } from "./common.ts";

/** Most entries in one request. */
export const MOST_ENTRIES = 200;

/** Id of a case, made on the device that opened it. */
export const CaseId = Opened.shape.caseId;

/** The form of an entry, for the document; entries are read by `EntryInput`, which names the field that is wrong. */
export const Entry = z.union([KnownEntry, UnknownEntry]).meta({
  id: "Entry",
  description: "One entry of a case. Kinds that this version does not know are kept and passed on.",
});

function issuesOf(error: CornerwiseError): { path: string[]; message: string }[] {
  const { issues } = error.details;
  return Array.isArray(issues) ? issues : [{ path: [], message: error.message }];
}

/** Reads one entry as the case's own code does. */
export const EntryInput = z.unknown().transform((value, context) => {
  try {
    return parseEntry(value);
  } catch (error) {
    if (!(error instanceof CornerwiseError)) throw error;
    for (const { path, message } of issuesOf(error)) {
      context.addIssue({ code: "custom", path, message });
    }
    return z.NEVER;
  }
});

export const CaseParams = z.strictObject({ id: CaseId });

export const CaseUrgency = z
  .strictObject({
    is: z
      .enum(["level", "nothing-told", "unknown"])
      .describe("Unknown: not reckoned yet, or it could not be."),
    level: z.string().nullable().describe("Id of the level of advice on driving."),
    danger: z
      .number()
      .min(0)
      .nullable()
      .describe("Sum over dangerous faults of chance over the fault's own bar."),
    current: z.boolean().describe("False while it is still to be reckoned with the newest answers."),
    problem: z.string().nullable().describe("Why it could not be reckoned."),
  })
  .meta({ id: "CaseUrgency", description: "How urgent an open case is, reckoned beside the server." });

export const CaseHead = z
  .strictObject({
    id: z.string(),
    version: z.number().int().describe("How many entries the case has had; grows with every one."),
    openedAt: Moment,
    changedAt: Moment,
    customer: z.string(),
    vehicle: z.string(),
    plate: z.string().nullable(),
    invented: z.boolean().describe("True for demonstration and training: nobody's real car."),
    closed: z.boolean().describe("True when a verdict stands."),
    ownerId: z.string().nullable().describe("Account that opened it; null: the workshop's."),
    assigned: z
      .strictObject({
        name: z.string(),
        account: z.string().nullable().describe("Null: a name without an account."),
      })
      .nullable()
      .describe("Who has the case; null: nobody."),
    urgency: CaseUrgency,
  })
  .meta({ id: "CaseHead" });

export const ListQuery = z.strictObject({
  after: Cursor.exactOptional(),
  limit: queryNumber(1, 200).exactOptional(),
  closed: z
    .enum(["0", "1"])
    .transform((text) => text === "1")
    .exactOptional(),
  text: lineOfText(100).describe("In customer, vehicle or plate, whatever the case.").exactOptional(),
  urgency: z
    .string()
    .max(400)
    .regex(/^[a-z0-9-]+(,[a-z0-9-]+)*$/, "give ids of levels, parted by commas")
    .transform((text) => text.split(","))
    .describe("Open cases of these levels; `nothing-told` and `unknown` count as levels.")
    .exactOptional(),
  who: lineOfText(90)
    .regex(
      /^(nobody|me|account:[A-Za-z0-9_-]{1,64}|name:.{1,80})$/,
      "give nobody, me, account:ID or name:NAME",
    )
    .describe("Who has the case.")
    .exactOptional(),
  invented: z
    .enum(["0", "1"])
    .transform((text) => text === "1")
    .exactOptional(),
  order: z
    .enum(["changed", "urgent", "oldest"])
    .describe("The last changed first (default); open ones first, by urgency and then age; by age alone.")
    .exactOptional(),
});

export const CaseList = z.strictObject({
  cases: z.array(CaseHead),
  next: z.string().nullable().describe("Give it as `after` for the next page; null: this is the last."),
});

export const EntriesQuery = z.strictObject({
  after: queryNumber(0, 999_999_999).exactOptional(),
  limit: queryNumber(1, 1000).exactOptional(),
});

export const EntryList = z.strictObject({
  version: z.number().int().describe("Version of the case; there is more while the last `seq` is smaller."),
  entries: z.array(z.strictObject({ seq: z.number().int().positive(), entry: Entry })),
});

export const NewEntries = z.strictObject({ entries: z.array(EntryInput).min(1).max(MOST_ENTRIES) });

export const AddedEntries = z.strictObject({
  version: z.number().int(),
  added: z.array(z.string()).describe("Ids that were new."),
  known: z.array(z.string()).describe("Ids that were there already, with the same content."),
});

const readDays = z.number().int().min(1).max(90);
const formDays = z.number().int().min(1).max(30);

export const NewLink = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("read"), days: readDays }),
  z.strictObject({
    kind: z.literal("customer").describe("Opens a short form to the case's customer."),
    days: formDays.default(7),
    words: textOfParagraphs(1000).describe("What the form says before its questions.").exactOptional(),
  }),
]);

export const LinkParams = z.strictObject({ id: z.string().regex(/^[A-Za-z0-9_-]{1,64}$/) });

export const MadeLink = z.strictObject({
  id: z.string(),
  token: z.string().describe("Opens the case to whoever holds it; shown this once."),
  expiresAt: Moment,
});

export const LinkList = z.strictObject({
  links: z.array(
    z.strictObject({
      id: z.string(),
      kind: z.string(),
      madeAt: Moment,
      madeBy: z.string().nullable().describe("Account that made it."),
      expiresAt: Moment,
      revokedAt: Moment.nullable(),
      words: z.string().nullable().describe("What a form says to the customer before its questions."),
      openedAt: Moment.nullable().describe("When a form was opened first."),
      doneAt: Moment.nullable().describe("When the customer was done with it."),
    }),
  ),
});

export const Shared = z.strictObject({
  kind: z.literal("read"),
  version: z.number().int(),
  entries: z.array(Entry),
});
