import type { CaseState } from "../../../lib/case/case-state.ts";
import type { CompiledFault, Knowledge } from "../../../lib/knowledge/schema/compiled.ts";

interface PlacedFault {
  readonly fault: CompiledFault;
  readonly place: string;
}

function placedFaults(knowledge: Knowledge, suspects: readonly string[]): PlacedFault[] {
  return suspects.flatMap((id) => {
    const [faultId, place = ""] = id.split("@");
    const fault = knowledge.faults.find((f) => f.id === faultId);
    return fault === undefined ? [] : [{ fault, place }];
  });
}

function overlaps(knowledge: Knowledge, a: string, b: string): boolean {
  const within = (id: string) => knowledge.places.places.find((p) => p.id === id)?.within ?? [];
  return a === b || within(a).includes(b) || within(b).includes(a);
}

/** Findings made by hand that prove one of the suspects. */
export function decisiveFindings(
  knowledge: Knowledge,
  state: CaseState,
  suspects: readonly string[],
): string[] {
  return byHand(knowledge, state, suspects, (fault, observation, level) =>
    fault.decisive.some((d) => d.observation === observation && level >= d.level),
  );
}

/** Findings made by hand that one of the suspects commonly gives. */
export function supportingFindings(
  knowledge: Knowledge,
  state: CaseState,
  suspects: readonly string[],
): string[] {
  return byHand(knowledge, state, suspects, (fault, observation) =>
    fault.links.some((link) => link.observation === observation),
  );
}

function byHand(
  knowledge: Knowledge,
  state: CaseState,
  suspects: readonly string[],
  holds: (fault: CompiledFault, observation: string, level: number) => boolean,
): string[] {
  const placed = placedFaults(knowledge, suspects);
  return state.answers
    .filter((answer) => {
      if (answer.by !== "check" || answer.state !== "present") return false;
      const [id = "", at] = answer.finding.split("@");
      const observation = knowledge.observations.find((o) => o.id === id);
      if (observation === undefined || at === undefined) return false;
      const level = answer.level === undefined ? 0 : observation.levels.indexOf(answer.level);
      return placed.some(({ fault, place }) => overlaps(knowledge, at, place) && holds(fault, id, level));
    })
    .map((answer) => answer.finding);
}
