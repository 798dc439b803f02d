import { checkLogic, evaluateLogic } from "../logic.ts";
import type { Authored } from "../schema/authored.ts";
import type {
  CompiledCheck,
  CompiledFault,
  CompiledObservation,
  CompiledPart,
  Knowledge,
} from "../schema/compiled.ts";
import { type CarVariant, carVariants } from "./car-variants.ts";

/** For each car variant: 1 where a thing is there. */
export type CarMask = Uint8Array;

/** The compiled knowledge with the look-ups that rules share. */
export interface CompiledWorld {
  readonly knowledge: Knowledge;
  /** Every kind of car that some rule of the knowledge tells apart. */
  readonly cars: readonly CarVariant[];
  readonly parts: ReadonlyMap<string, CompiledPart>;
  readonly observations: ReadonlyMap<string, CompiledObservation>;
  /** Whether two places are the same or one lies within the other. */
  readonly overlap: (a: string, b: string) => boolean;
  /** Places that a fault can be at. */
  readonly placesOf: (fault: CompiledFault) => readonly string[];
  /** Cars that can have the fault at the place. */
  readonly faultCars: (fault: CompiledFault, place: string) => CarMask;
  /** Cars that can have both faults, each at its place. */
  readonly pairCars: (a: CompiledFault, at: string, b: CompiledFault, place: string) => CarMask;
  /** Cars on which the observation at the place can be settled by some check. */
  readonly settledCars: (observation: CompiledObservation, place: string) => CarMask;
  /** Chance of at least the grade, given the fault alone at its place, seen at the observation's place; the leak included. */
  readonly chance: (
    fault: CompiledFault,
    at: string,
    observation: CompiledObservation,
    place: string,
    level: number,
  ) => number;
}

/** What rules look at: the compiled knowledge and the records that it came from. */
export interface LintWorld extends CompiledWorld {
  readonly authored: Authored;
}

/** Gather the look-ups once for all rules. */
export function lintWorld(knowledge: Knowledge, authored: Authored): LintWorld {
  return { ...compiledWorld(knowledge), authored };
}

/** The look-ups that need nothing but the compiled knowledge. */
export function compiledWorld(knowledge: Knowledge): CompiledWorld {
  const rules = [knowledge.parts, knowledge.faults, knowledge.observations, knowledge.checks]
    .flat()
    .flatMap((record) => (record.when === undefined ? [] : checkLogic(record.when)));
  const cars = carVariants(knowledge, new Set(rules));
  const parts = new Map(knowledge.parts.map((part) => [part.id, part]));
  const observations = new Map(knowledge.observations.map((observation) => [observation.id, observation]));
  const places = new Map(knowledge.places.places.map((place) => [place.id, place]));
  const overlap = (a: string, b: string) =>
    a === b || places.get(a)?.within.includes(b) === true || places.get(b)?.within.includes(a) === true;

  // A check settles the observation where it is made; failing that, wherever the places overlap.
  const settlesAt = (observation: CompiledObservation, at: string, place: string) =>
    at === place || (overlap(at, place) && !observation.places.includes(at));

  const masks = new Map<string, CarMask>();
  const maskOf = (when: unknown, place: string): CarMask => {
    const key = `${JSON.stringify(when ?? true)}@${place}`;
    let mask = masks.get(key);
    if (mask === undefined) {
      const record = places.get(place);
      const at = { id: place, axle: record?.axle ?? "none", side: record?.side ?? "none" };
      mask = Uint8Array.from(cars, (car) =>
        when === undefined || evaluateLogic(when, { ...car.data, place: at }) ? 1 : 0,
      );
      masks.set(key, mask);
    }
    return mask;
  };

  const checksOf = new Map<string, CompiledCheck[]>();
  for (const check of knowledge.checks) {
    for (const id of check.settles) checksOf.set(id, [...(checksOf.get(id) ?? []), check]);
  }
  const linkOf = new Map(
    knowledge.faults.map((fault) => [
      fault.id,
      new Map(fault.links.map((link) => [link.observation, link.levels])),
    ]),
  );
  const faultMasks = new Map<string, CarMask>();
  const settledMasks = new Map<string, CarMask>();
  // Few kinds of mask stand for all faults at all places: one object a kind, so that pairs of them can be kept.
  const kinds = new Map<string, CarMask>();
  const faultCars = (fault: CompiledFault, place: string) =>
    remember(faultMasks, `${fault.id}@${place}`, () => {
      const mask = both(maskOf(parts.get(fault.part)?.when, place), maskOf(fault.when, place));
      return remember(kinds, mask.join(""), () => mask);
    });
  const pairs = new Map<CarMask, Map<CarMask, CarMask>>();
  const pairCars = (a: CompiledFault, at: string, b: CompiledFault, place: string) => {
    const [one, other] = [faultCars(a, at), faultCars(b, place)];
    const kept = pairs.get(one) ?? new Map<CarMask, CarMask>();
    pairs.set(one, kept);
    return remember(kept, other, () => both(one, other));
  };
  return {
    knowledge,
    cars,
    parts,
    observations,
    overlap,
    placesOf: (fault) => parts.get(fault.part)?.places ?? [],
    faultCars,
    pairCars,
    settledCars: (observation, place) =>
      remember(settledMasks, `${observation.id}@${place}`, () => {
        const settled = (checksOf.get(observation.id) ?? []).flatMap((check) =>
          check.places.filter((at) => settlesAt(observation, at, place)).map((at) => maskOf(check.when, at)),
        );
        return both(maskOf(observation.when, place), union(settled, cars.length));
      }),
    chance: (fault, at, observation, place, level) => {
      const leak = observation.leak[level] ?? 0;
      const levels = overlap(at, place) ? linkOf.get(fault.id)?.get(observation.id) : undefined;
      return 1 - (1 - leak) * (1 - (levels?.[level]?.p ?? 0));
    },
  };
}

function remember<K>(store: Map<K, CarMask>, key: K, make: () => CarMask): CarMask {
  const known = store.get(key);
  if (known !== undefined) return known;
  const made = make();
  store.set(key, made);
  return made;
}

/** Whether the fault can be at the place on one car, given as logic rules read it. */
export function canBeAt(
  { knowledge, parts }: CompiledWorld,
  fault: string,
  place: string,
  car: Readonly<Record<string, unknown>>,
): boolean {
  const record = knowledge.faults.find((candidate) => candidate.id === fault);
  const part = record === undefined ? undefined : parts.get(record.part);
  const at = knowledge.places.places.find((candidate) => candidate.id === place);
  const rules = [part?.when, record?.when];
  return (
    part?.places.includes(place) === true &&
    rules.every((rule) => rule === undefined || evaluateLogic(rule, { ...car, place: at }))
  );
}

/** Cars of both masks. A plain loop: rules that compare every two faults spend most of their time here. */
export function both(a: CarMask, b: CarMask): CarMask {
  const out = new Uint8Array(a.length);
  for (let i = 0; i < a.length; i++) out[i] = (a[i] as number) & (b[i] as number);
  return out;
}

/** Cars of any of the masks. */
export function union(masks: readonly CarMask[], length: number): CarMask {
  const out = new Uint8Array(length);
  for (const mask of masks)
    for (let i = 0; i < length; i++) out[i] = (out[i] as number) | (mask[i] as number);
  return out;
}

/** Whether some car is in both masks. */
export function meet(a: CarMask, b: CarMask): boolean {
  for (let i = 0; i < a.length; i++) if (a[i] === 1 && b[i] === 1) return true;
  return false;
}

/** Whether the mask holds any car. */
export function anyCar(mask: CarMask): boolean {
  return mask.includes(1);
}
