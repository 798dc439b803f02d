import { foldCase } from "../../../lib/case/fold.ts";
import { type SaidByForm, saidByForm } from "../../../lib/case/said-by-form.ts";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { Entry } from "../../../lib/case/entries.ts";
import type { Link } from "../../../lib/store/index.ts";
import { everyEntry } from "../every-entry.ts";
import type { Server } from "../server.ts";

/** The case behind a form, as it stands now. */
export interface FormCase {
  readonly link: Link;
  readonly entries: readonly Entry[];
  readonly state: CaseState;
  /** What was said by this form and not taken back. */
  readonly said: readonly SaidByForm[];
}

/** Errors  StoreProblem no-such-case, case-removed. */
export async function formCase({ store }: Server, link: Link): Promise<FormCase> {
  const { entries } = await everyEntry(store, link.target);
  return { link, entries, state: foldCase(entries), said: saidByForm(entries, link.id) };
}
