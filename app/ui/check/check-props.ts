import type { CaseState } from "../../../lib/case/case-state.ts";
import type { ProposedCheck } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Ranked, Situation } from "../../engine/protocol.ts";
import type { EntryBody } from "../../store/new-entry.ts";
import type { Settings } from "../../store/use-settings.ts";

/** What the card of a check and its pieces are given. */
export interface CheckProps {
  readonly knowledge: Knowledge;
  readonly state: CaseState;
  readonly proposed: ProposedCheck;
  readonly situation: Situation;
  readonly notices: Ranked["notices"];
  readonly settings: Settings;
  readonly onSettings: (change: Partial<Settings>) => void;
  readonly append: (...bodies: readonly EntryBody[]) => void;
  /** The check was answered or put aside; show the next one. */
  readonly onDone: () => void;
}
