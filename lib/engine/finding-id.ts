import { CornerwiseError } from "../errors.ts";
import type {
  CompiledComplaint,
  CompiledContext,
  CompiledFeature,
  CompiledObservation,
  Knowledge,
} from "../knowledge/schema/compiled.ts";

/** What a finding id speaks of. */
export type Finding =
  | { readonly kind: "complaint"; readonly complaint: CompiledComplaint }
  | {
      readonly kind: "feature";
      readonly feature: CompiledFeature;
      readonly complaint: CompiledComplaint | undefined;
    }
  | {
      readonly kind: "observation";
      readonly observation: CompiledObservation;
      readonly place: string | undefined;
    }
  | { readonly kind: "context"; readonly context: CompiledContext };

interface Names {
  readonly complaints: ReadonlyMap<string, CompiledComplaint>;
  readonly features: ReadonlyMap<string, CompiledFeature>;
  readonly observations: ReadonlyMap<string, CompiledObservation>;
  readonly contexts: ReadonlyMap<string, CompiledContext>;
  readonly places: ReadonlySet<string>;
}

const NAMES = new WeakMap<Knowledge, Names>();

function namesOf(knowledge: Knowledge): Names {
  const kept = NAMES.get(knowledge);
  if (kept !== undefined) return kept;
  const byId = <T extends { id: string }>(list: readonly T[]): Map<string, T> =>
    new Map(list.map((r) => [r.id, r]));
  const names = {
    complaints: byId(knowledge.complaints),
    features: byId(knowledge.features),
    observations: byId(knowledge.observations),
    contexts: byId(knowledge.contexts),
    places: new Set(knowledge.places.places.map((p) => p.id)),
  };
  NAMES.set(knowledge, names);
  return names;
}

/**
 * Reads a finding id: `noise`, `noise:small-bumps`, `small-bumps`, `play-3-9@front-left`, `play-3-9`, `pothole-strike`.
 *
 * Errors: `unknown-id` with the part of the id that the knowledge does not hold.
 */
export function parseFinding(knowledge: Knowledge, id: string): Finding {
  const names = namesOf(knowledge);
  const [head, place, ...more] = id.split("@") as [string, string | undefined];
  if (more.length > 0) throw unknown(id, "it holds more than one place");
  if (place !== undefined) {
    const observation = names.observations.get(head);
    if (observation === undefined) throw unknown(id, `"${head}" is no observation`);
    if (!names.places.has(place)) throw unknown(id, `"${place}" is no place`);
    return { kind: "observation", observation, place };
  }
  const [outer, inner] = id.split(":") as [string, string | undefined];
  if (inner !== undefined) {
    const complaint = names.complaints.get(outer);
    const feature = names.features.get(inner);
    if (complaint === undefined) throw unknown(id, `"${outer}" is no complaint`);
    if (feature === undefined) throw unknown(id, `"${inner}" is no feature`);
    if (!feature.complaints.includes(outer)) throw unknown(id, `"${inner}" is no feature of "${outer}"`);
    return { kind: "feature", feature, complaint };
  }
  const complaint = names.complaints.get(id);
  if (complaint !== undefined) return { kind: "complaint", complaint };
  const feature = names.features.get(id);
  if (feature !== undefined) return { kind: "feature", feature, complaint: undefined };
  const observation = names.observations.get(id);
  if (observation !== undefined) return { kind: "observation", observation, place: undefined };
  const context = names.contexts.get(id);
  if (context !== undefined) return { kind: "context", context };
  throw unknown(id, "no complaint, feature, observation or context has that id");
}

/** The name of a finding for people: "noise: over small sharp bumps", "play at 3 and 9 o'clock, front left". */
export function findingName(knowledge: Knowledge, id: string): string {
  const finding = parseFinding(knowledge, id);
  switch (finding.kind) {
    case "complaint":
      return finding.complaint.name;
    case "context":
      return finding.context.name;
    case "feature":
      return finding.complaint === undefined
        ? finding.feature.name
        : `${finding.complaint.name}: ${finding.feature.name}`;
    case "observation": {
      const place = knowledge.places.places.find((p) => p.id === finding.place);
      const everywhere = place === undefined || finding.observation.places.length === 1;
      return everywhere ? finding.observation.name : `${finding.observation.name}, ${place.name}`;
    }
  }
}

function unknown(id: string, why: string): CornerwiseError {
  return new CornerwiseError(
    "unknown-id",
    `Finding "${id}": ${why}. List the ids with "cornerwise findings".`,
    { id },
  );
}
