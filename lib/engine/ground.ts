import { type Car, readCar, type CarInput } from "../car/car.ts";
import { CornerwiseError } from "../errors.ts";
import type { CompiledFault, CompiledShowing, Knowledge } from "../knowledge/schema/compiled.ts";
import { knownContexts } from "./contexts.ts";
import { buildNodes, type ObservationNode } from "./observation-nodes.ts";
import type { FittedPart } from "./part-ages.ts";
import { indexPlaces, type PlaceIndex } from "./place-index.ts";
import { suspectPriors } from "./priors.ts";
import type { Suspect } from "./suspect.ts";

/** What a suspect shows as one complaint. */
export interface ComplaintLink {
  readonly suspect: number;
  readonly showings: readonly CompiledShowing[];
}

/** The knowledge laid over one car: suspects with priors, findings at places, checks at places. Plain data, never changed. */
export interface Grounded {
  readonly knowledge: Knowledge;
  readonly car: Car;
  readonly contexts: readonly string[];
  /** Parts whose own age is known. */
  readonly fitted: readonly FittedPart[];
  readonly places: PlaceIndex;
  readonly suspects: readonly Suspect[];
  readonly suspectIndex: ReadonlyMap<string, number>;
  readonly prior: Float64Array;
  readonly faults: ReadonlyMap<string, CompiledFault>;
  readonly links: ReadonlyMap<string, readonly ComplaintLink[]>;
  readonly nodes: ReadonlyMap<string, ObservationNode>;
}

/** Suspects below this chance of being on the car at all are left out. */
const SMALLEST_PRIOR = 1e-7;

/**
 * Lays the knowledge over a car.
 *
 * Unknown attributes are averaged over the cars on the road; `contexts` are ids of things that happened lately;
 * `fitted` are parts that are younger than the car, or known to be the first.
 *
 * Errors: `bad-request` for a car value that does not exist, `unknown-id` for a context that the knowledge does not
 * hold, `empty-model` when no fault can be on this car.
 */
export function groundCar(
  knowledge: Knowledge,
  carInput: CarInput,
  contexts: readonly string[] = [],
  fitted: readonly FittedPart[] = [],
): Grounded {
  const { car } = readCar(knowledge, carInput);
  const happened = knownContexts(knowledge, contexts);
  const places = indexPlaces(knowledge);
  const suspects = suspectPriors(knowledge, car, happened, places, fitted)
    .filter((s) => s.prior > SMALLEST_PRIOR)
    .map((s, index) => ({ ...s, index }));
  if (suspects.length === 0) {
    throw new CornerwiseError(
      "empty-model",
      "No fault of this knowledge can be on this car; mend the car or the knowledge.",
      {},
    );
  }
  const faults = new Map(knowledge.faults.map((f) => [f.id, f]));
  return {
    knowledge,
    car,
    contexts: happened,
    fitted,
    places,
    suspects,
    suspectIndex: new Map(suspects.map((s) => [s.id, s.index])),
    prior: Float64Array.from(suspects, (s) => s.prior),
    faults,
    links: complaintLinks(suspects, faults),
    nodes: buildNodes(knowledge, car, suspects, faults, places),
  };
}

function complaintLinks(
  suspects: readonly Suspect[],
  faults: ReadonlyMap<string, CompiledFault>,
): Map<string, ComplaintLink[]> {
  const links = new Map<string, ComplaintLink[]>();
  const shown = new Map<string, Map<string, CompiledShowing[]>>();
  for (const suspect of suspects) {
    const byComplaint = shown.get(suspect.fault) ?? showingsOf(faults.get(suspect.fault));
    shown.set(suspect.fault, byComplaint);
    for (const [complaint, showings] of byComplaint) {
      const list = links.get(complaint) ?? [];
      links.set(complaint, list);
      list.push({ suspect: suspect.index, showings });
    }
  }
  return links;
}

/** The ways in which a fault shows, by complaint. */
function showingsOf(fault: CompiledFault | undefined): Map<string, CompiledShowing[]> {
  const byComplaint = new Map<string, CompiledShowing[]>();
  for (const showing of fault?.shows ?? []) {
    const list = byComplaint.get(showing.complaint);
    if (list === undefined) byComplaint.set(showing.complaint, [showing]);
    else list.push(showing);
  }
  return byComplaint;
}
