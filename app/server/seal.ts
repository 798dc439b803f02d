import { createHmac, randomBytes, timingSafeEqual } from "node:crypto";
import { type Entry, isByForm } from "../../lib/case/entries.ts";
import { canonicalJson } from "../../lib/knowledge/canonical.ts";
import { idsThatAreThere, settingOnce, type Store } from "../../lib/store/index.ts";
import { ApiProblem } from "./problem.ts";

const KEY = "form-seal";

const sealKey = (store: Store): Promise<string> =>
  settingOnce(store, KEY, randomBytes(32).toString("base64url"));

/** The entry without the seal, under the key of this very database (RFC 2104). */
function sealOf(key: string, entry: Entry): string {
  const { seal: _, ...said } = entry as Entry & { readonly seal?: unknown };
  return createHmac("sha256", key).update(canonicalJson(said)).digest("base64url");
}

/** Entries that our own form writes, each with the seal that nobody else can make. */
export async function sealed<E extends Entry>(store: Store, entries: readonly E[]): Promise<E[]> {
  const key = await sealKey(store);
  return entries.map((entry) => ({ ...entry, seal: sealOf(key, entry) }));
}

/**
 * Refuses entries that say they come from the customer and do not: those of a client's own making.
 *
 * Good are what the form wrote here (a device may send it again, to a server that was set back to an older copy), what is here
 * already, and whatever comes along with a case that is new here: it was told somewhere else.
 *
 * Errors  ApiProblem bad-input.
 */
export async function refuseForged(
  store: Store,
  caseId: string,
  entries: readonly Entry[],
  isNewCase: boolean,
): Promise<void> {
  if (isNewCase || !entries.some(isByForm)) return;
  const key = await sealKey(store);
  const doubtful = entries.flatMap((entry, index) =>
    isByForm(entry) && !holds(key, entry) ? [{ id: entry.id, index }] : [],
  );
  if (doubtful.length === 0) return;
  const there = await idsThatAreThere(
    store,
    caseId,
    doubtful.map(({ id }) => id),
  );
  const forged = doubtful.filter(({ id }) => !there.has(id));
  if (forged.length === 0) return;
  throw new ApiProblem(
    "bad-input",
    "Only the form of a link says what the customer answered. Leave `from` out: it is then what you were told.",
    {
      fields: forged.map(({ index }) => ({
        path: `entries.${index}.from`,
        message: "only the customer's own form writes this; leave it out",
      })),
    },
  );
}

function holds(key: string, entry: Entry): boolean {
  const given = Buffer.from("seal" in entry && typeof entry.seal === "string" ? entry.seal : "");
  const wanted = Buffer.from(sealOf(key, entry));
  return given.length === wanted.length && timingSafeEqual(given, wanted);
}
