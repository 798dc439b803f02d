import { type CarInput, readCar } from "../car/car.ts";
import { standingChance } from "../car/standing-chance.ts";
import { usage } from "../car/usage.ts";
import type { CompiledFault, Knowledge } from "../knowledge/schema/compiled.ts";
import { scaledOdds } from "../maths/scaled-odds.ts";
import { weibullConditionalFailure } from "../maths/weibull-conditional-failure.ts";
import { weibullCumulativeHazard } from "../maths/weibull-cumulative-hazard.ts";
import { knownContexts } from "./contexts.ts";
import { type FaultReading, faultPaths, faultReadings } from "./fault-readings.ts";
import { type FittedPart, type PartAge, partAges } from "./part-ages.ts";
import { indexPlaces } from "./place-index.ts";
import { standsLonger } from "../car/stands-longer.ts";
import { standingNow } from "./standing-now.ts";

/** Chance of failing within a further distance. */
export interface WearAhead {
  readonly km: number;
  /** With what is not known of the car and of earlier renewals averaged over. */
  readonly chance: number;
  /** Conditional Weibull failure of a part that is on the car, works, and was never renewed since its age began. */
  readonly ifNeverRenewed: number;
}

/** One way in which a part wears out at one place of this car. */
export interface WearLine {
  readonly fault: string;
  readonly part: string;
  readonly place: string;
  /** Share of cars like this that have the part there. */
  readonly onCar: number;
  /** Chance that it has failed and stands unmended: the prior, before any finding. */
  readonly now: number;
  readonly ahead: readonly WearAhead[];
  /** Weibull wear life as the record has it, before modifiers; `basis` is a source id. */
  readonly life: {
    readonly unit: "km" | "years";
    readonly characteristic: number;
    readonly shape: number;
    readonly basis: string;
  };
  readonly age: PartAge;
  /** Modifiers of the record that hold, or may hold: `chance` is that they do. */
  readonly modifiers: readonly {
    readonly why: string;
    readonly life: number;
    readonly odds: number;
    readonly chance: number;
  }[];
}

export interface WearOptions {
  /** Things that happened lately; they move `now`, as they move the prior. */
  readonly contexts?: readonly string[];
  /** Parts that are younger than the car. */
  readonly fitted?: readonly FittedPart[];
  /** Distances to look ahead. */
  readonly aheadKm?: readonly number[];
}

const AHEAD_KM = [10_000, 20_000] as const;

/**
 * Chance of every wear part of this car to have failed now, and to fail within the next kilometres; likeliest now first.
 *
 * Lives, modifiers and what happened lately are those of the priors. A part whose age is that of the car may have been
 * renewed: its rate of failing is then the smaller of the first part's hazard and the renewal rate, as for the prior. One
 * that is known to be fitted later, or to be the first, goes by its own hazard.
 *
 * Errors: `bad-request` for a car value or an age that cannot be, `unknown-id` for a context, part or place that is not there.
 * Source: conditional failure 1 - R(t + x) / R(t), NIST/SEMATECH e-Handbook of Statistical Methods, 8.1.6.2.
 */
export function wearView(knowledge: Knowledge, carInput: CarInput, options: WearOptions = {}): WearLine[] {
  const { car } = readCar(knowledge, carInput);
  const contexts = knownContexts(knowledge, options.contexts ?? []);
  const used = usage(knowledge, car);
  const places = indexPlaces(knowledge);
  const kmPerYear = used.km > 0 && used.years > 0 ? used.km / used.years : knowledge.car.kmPerYear.value;
  const ageOf = partAges(knowledge, car, used, kmPerYear, places, options.fitted ?? []);
  const parts = new Map(knowledge.parts.map((p) => [p.id, p]));
  const lines: WearLine[] = [];
  for (const fault of knowledge.faults) {
    const part = parts.get(fault.part);
    const life = weibullOf(fault);
    if (part === undefined || life === undefined) continue;
    const paths = faultPaths(fault, part);
    const longer = standsLonger(knowledge, used);
    for (const place of part.places) {
      const possible = faultReadings(knowledge, car, used, fault, part, place, places, paths);
      const onCar = sumOver(possible, () => 1);
      if (onCar === 0) continue;
      const age = ageOf(part.id, place);
      lines.push({
        fault: fault.id,
        part: part.id,
        place,
        onCar,
        now: sumOver(possible, (reading) => standingNow(knowledge, age, longer, contexts, fault, reading)),
        ahead: (options.aheadKm ?? AHEAD_KM).map((km) =>
          ahead(possible, onCar, life, age, km, life.unit === "km" ? km : km / kmPerYear),
        ),
        life,
        age,
        modifiers: modifiersOf(fault, possible, onCar),
      });
    }
  }
  return lines.sort((a, b) => b.now - a.now || (`${a.fault}@${a.place}` < `${b.fault}@${b.place}` ? -1 : 1));
}

function ahead(
  possible: readonly FaultReading[],
  onCar: number,
  life: WearLine["life"],
  age: PartAge,
  km: number,
  further: number,
): WearAhead {
  const t = life.unit === "km" ? age.km : age.years;
  const ifNeverRenewed = lastedFailure(possible, life, t, further);
  const chance = age.ownAge
    ? onCar * ifNeverRenewed
    : sumOver(possible, (reading) =>
        scaledOdds(
          standingChance(t + further, further, life.characteristic * reading.life, life.shape),
          reading.odds,
        ),
      );
  return { km, chance, ifNeverRenewed };
}

/** Conditional failure over the readings, each weighed by its chance of having lasted so far. */
function lastedFailure(
  possible: readonly FaultReading[],
  { characteristic, shape }: WearLine["life"],
  t: number,
  further: number,
): number {
  const hazards = possible.map(({ life }) => weibullCumulativeHazard(t, characteristic * life, shape));
  // Only ratios count: taking the smallest hazard off keeps an old part's chances from all falling to 0.
  const least = Math.min(...hazards);
  let weight = 0;
  let failing = 0;
  possible.forEach(({ probability, life, odds }, i) => {
    const lasted = probability * Math.exp(least - (hazards[i] ?? least));
    const fails = weibullConditionalFailure(t, further, characteristic * life, shape);
    weight += lasted;
    failing += lasted * scaledOdds(fails, odds);
  });
  return failing / weight;
}

function weibullOf({ life }: CompiledFault): WearLine["life"] | undefined {
  if ("share" in life) return undefined;
  const { shape, basis } = life;
  return "km" in life
    ? { unit: "km", characteristic: life.km, shape, basis }
    : { unit: "years", characteristic: life.years, shape, basis };
}

function modifiersOf(
  fault: CompiledFault,
  possible: readonly FaultReading[],
  onCar: number,
): WearLine["modifiers"] {
  return fault.modifiers.flatMap(({ why, life = 1, odds = 1 }, i) => {
    const chance = sumOver(possible, ({ modifiers }) => (modifiers.includes(i) ? 1 : 0)) / onCar;
    return chance > 0 ? [{ why, life, odds, chance }] : [];
  });
}

function sumOver(possible: readonly FaultReading[], value: (reading: FaultReading) => number): number {
  return possible.reduce((sum, reading) => sum + reading.probability * value(reading), 0);
}
