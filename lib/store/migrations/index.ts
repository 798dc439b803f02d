import type { Kysely } from "kysely";
import type { StoreKind } from "../tables.ts";
import { makeCases } from "./001-cases.ts";
import { makeLinks } from "./002-links.ts";
import { makeSettings } from "./003-settings.ts";
import { makeAccounts } from "./004-accounts.ts";
import { countAccountChanges } from "./005-account-versions.ts";
import { indexClosedCases } from "./006-closed-cases.ts";
import { indexSearch } from "./007-search.ts";
import { makePhotos } from "./008-photos.ts";
import { orderByUrgency } from "./009-urgency.ts";
import { makeExercises } from "./010-exercises.ts";

type Step = (db: Kysely<unknown>, kind: StoreKind) => Promise<void>;

/** Every change of the tables, in order. One that was released is never edited: add the next number. */
export const MIGRATIONS: Readonly<Record<string, Step>> = {
  "001-cases": makeCases,
  "002-links": makeLinks,
  "003-settings": makeSettings,
  "004-accounts": makeAccounts,
  "005-account-versions": countAccountChanges,
  "006-closed-cases": indexClosedCases,
  "007-search": indexSearch,
  "008-photos": makePhotos,
  "009-urgency": orderByUrgency,
  "010-exercises": makeExercises,
};
