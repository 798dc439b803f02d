import { compileFault } from "./compile-fault.ts";
import { type KnowledgeProblem, throwProblems } from "./problems.ts";
import type { Authored } from "./schema/authored.ts";
import type { CompiledFeature, CompiledObservation, Knowledge } from "./schema/compiled.ts";
import { endedProblems, logicProblems, unresolvedReferences } from "./unresolved.ts";

/**
 * Compile the authored knowledge: fold profiles in, turn frequency words into numbers, expand place sets, fill every default.
 *
 * Ended records are left out; their files stay in the folder, so that their ids cannot be used again.
 * Shape   every list in the order of ids; places in the order of places.json.
 * Errors  "unknown-id" when a record names something that is not there, "bad-logic" for a rule that may not be used,
 *         "bad-record" for grades that do not fit; each lists all of its kind (details.problems: KnowledgeProblem[]).
 */
export function compileKnowledge(authored: Authored): Knowledge {
  throwProblems("unknown-id", [...unresolvedReferences(authored), ...endedProblems(authored)]);
  throwProblems("bad-logic", logicProblems(authored));
  const problems: KnowledgeProblem[] = [];
  const observations = authored.observations
    .filter(isLive)
    .map((observation) => compileObservation(observation, authored, problems));
  const observationById = new Map(observations.map((observation) => [observation.id, observation]));
  const faults = authored.faults
    .filter(isLive)
    .map((fault) => compileFault(fault, authored, observationById, problems));
  throwProblems("bad-record", problems);
  return {
    schemaVersion: authored.manifest.schemaVersion,
    version: authored.manifest.version,
    scale: authored.scale,
    places: authored.places,
    car: authored.car,
    setUps: authored.setUps,
    reports: authored.reports,
    groups: authored.groups,
    words: authored.words,
    costs: authored.costs,
    orders: authored.orders,
    limits: authored.limits,
    publishedShares: authored.publishedShares,
    doubt: authored.doubt,
    advice: authored.advice,
    lay: authored.lay,
    parts: authored.parts
      .filter(isLive)
      .map(({ at, ...part }) => ({ ...part, places: expand(at, authored) })),
    faults,
    complaints: authored.complaints.filter(isLive),
    features: authored.features.filter(isLive).map((feature) => compileFeature(feature, authored)),
    observations,
    contexts: [...authored.contexts],
    checks: authored.checks.filter(isLive).map((check) => ({ ...check, places: expand(check.at, authored) })),
    cautions: [...authored.cautions],
    sources: [...authored.sources],
    layouts: [...authored.layouts],
    demoCases: [...authored.demoCases],
  };
}

function isLive(record: { readonly ended?: unknown }): boolean {
  return record.ended === undefined;
}

/** Place ids of one or more place sets, each once, in the order of places.json. */
function expand(sets: string | readonly string[], authored: Authored): string[] {
  const wanted = new Set([sets].flat().flatMap((set) => authored.places.sets[set] ?? []));
  return authored.places.places.map((place) => place.id).filter((id) => wanted.has(id));
}

function compileFeature(feature: Authored["features"][number], authored: Authored): CompiledFeature {
  return { ...feature, unlisted: feature.unlisted ?? feature.background * authored.groups.unlisted };
}

function compileObservation(
  observation: Authored["observations"][number],
  authored: Authored,
  problems: KnowledgeProblem[],
): CompiledObservation {
  const levels = observation.levels ?? ["present"];
  const { leak } = observation;
  const leaks = typeof leak === "number" ? levels.map(() => leak) : leak;
  const wrong = (path: string, count: number) => {
    problems.push({
      file: `observations/${observation.id}.json`,
      path,
      what: `${count} given for ${levels.length} grade(s) (${levels.join(", ")})`,
      mend: `Give ${levels.length}, one a grade, weakest first.`,
    });
  };
  if (leaks.length !== levels.length) wrong("leak", leaks.length);
  const limits = observation.measure?.atLeast.length;
  if (limits !== undefined && limits !== levels.length) wrong("measure.atLeast", limits);
  return { ...observation, levels, leak: leaks, places: expand(observation.at, authored) };
}
