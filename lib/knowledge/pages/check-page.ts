import type {
  CompiledCheck,
  CompiledComplaint,
  CompiledFault,
  CompiledObservation,
  Knowledge,
  SetUpsFile,
  SourceRecord,
} from "../schema/compiled.ts";
import { type CarNeeds, carNeeds } from "./car-limits.ts";
import { type Cause, causesOfObservation } from "./causes.ts";
import { type LimitOf, limitsOf } from "./limits-of.ts";
import { recordsOf } from "./records.ts";
import { sourceOf } from "./sources.ts";

/** One finding that a check settles, and what the result says. */
export interface Settling {
  readonly observation: CompiledObservation;
  /** Faults that give it, the proven and the strongest first. */
  readonly causes: readonly Cause[];
  readonly limits: readonly LimitOf[];
}

/** Everything that the page of a check says. */
export interface CheckPage {
  readonly check: CompiledCheck;
  readonly places: readonly string[];
  readonly needs: readonly CarNeeds[];
  readonly setUp: SetUpsFile["setUps"][number] | undefined;
  readonly cautions: readonly string[];
  readonly settles: readonly Settling[];
  /** Findings that forbid it. */
  readonly notWhen: readonly CompiledObservation[];
  /** Faults that it can prove by itself. */
  readonly proves: readonly CompiledFault[];
  /** Complaints that the faults it sees can be behind, the one with most of them first. */
  readonly complaints: readonly { readonly complaint: CompiledComplaint; readonly faults: number }[];
  readonly source: SourceRecord | undefined;
}

/** The page of a check; undefined when there is no such check. */
export function checkPage(knowledge: Knowledge, id: string): CheckPage | undefined {
  const check = knowledge.checks.find((c) => c.id === id);
  if (check === undefined) return undefined;
  const { observations, placeName } = recordsOf(knowledge);
  const named = (ids: readonly string[]) => ids.flatMap((o) => observations.get(o) ?? []);
  const settles = named(check.settles).map((observation) => ({
    observation,
    causes: causesOfObservation(knowledge, observation.id),
    limits: limitsOf(knowledge, observation.id),
  }));
  const causes = settles.flatMap((s) => s.causes);
  const faults = [...new Set(causes.map(({ fault }) => fault))];
  return {
    check,
    places: check.places.map(placeName),
    needs: carNeeds(knowledge, check.when, check.places),
    setUp: knowledge.setUps.setUps.find((s) => s.id === check.setUp),
    cautions: check.cautions.flatMap((c) =>
      knowledge.cautions.flatMap((caution) => (caution.id === c ? [caution.text] : [])),
    ),
    settles,
    notWhen: named(check.notWhen),
    proves: [
      ...new Set(causes.flatMap(({ fault, provesFrom }) => (provesFrom === undefined ? [] : [fault]))),
    ],
    complaints: knowledge.complaints
      .map((complaint) => ({
        complaint,
        faults: faults.filter((fault) => fault.shows.some((s) => s.complaint === complaint.id)).length,
      }))
      .filter(({ faults: count }) => count > 0)
      .sort((a, b) => b.faults - a.faults),
    source: sourceOf(knowledge, check.basis),
  };
}
