import { entropyBits } from "../maths/entropy-bits.ts";
import type {
  CompiledComplaint,
  CompiledFeature,
  CompiledShowing,
  PlaceRecord,
} from "../knowledge/schema/compiled.ts";
import { featureWeights, showingFit, showingStrength, trusted } from "./complaint-bit.ts";
import { type CheckFinding, checkGain, type Component } from "./core/index.ts";
import { featureChance } from "./feature-chance.ts";
import type { GatheredComplaint } from "./gathered.ts";
import type { Grounded } from "./ground.ts";
import type { Weighing } from "./weigh.ts";

/** A question that has not been answered, and what its answer is expected to teach. */
export interface Question {
  /** The finding that it asks for. */
  readonly finding: string;
  readonly ask: string;
  readonly who: "owner" | "driver" | "technician";
  readonly gainBits: number;
  readonly yes: number;
}

/** Every open question about features of present complaints, about further complaints and about what happened lately. */
export function openQuestions(
  grounded: Grounded,
  weighing: Weighing,
  components: readonly Component[],
  merged: Int32Array,
  asked: ReadonlySet<string>,
): Question[] {
  const { knowledge } = grounded;
  const questions: Question[] = [];
  for (const gathered of weighing.assembled.gathered.complaints.values()) {
    if (!gathered.present) continue;
    const ways = waysToShow(grounded, gathered, components);
    for (const feature of knowledge.features) {
      const finding = `${gathered.complaint.id}:${feature.id}`;
      if (!feature.complaints.includes(gathered.complaint.id) || asked.has(finding) || asked.has(feature.id))
        continue;
      if (ruledOut(feature, gathered)) continue;
      const chances = featureChances(grounded, gathered, feature, ways);
      questions.push({
        finding,
        ask: feature.question,
        who: feature.who,
        ...yesNoGain(components, merged, chances),
      });
    }
  }
  for (const complaint of knowledge.complaints) {
    if (asked.has(complaint.id)) continue;
    const { gainBits, outcomes } = checkGain(components, merged, asFindings(grounded, complaint));
    const yes = outcomes.reduce((sum, o) => sum + (o.pattern[0] === 1 ? o.probability : 0), 0);
    questions.push({ finding: complaint.id, ask: complaint.question, who: "owner", gainBits, yes });
  }
  for (const context of knowledge.contexts) {
    if (asked.has(context.id) || grounded.contexts.includes(context.id)) continue;
    const chances = components.map((c) => {
      const factor = Math.max(1, ...c.set.map((i) => contextFactor(grounded, i, context.id)));
      return (context.share * factor) / (1 - context.share + context.share * factor);
    });
    questions.push({
      finding: context.id,
      ask: context.question,
      who: "owner",
      ...yesNoGain(components, merged, chances),
    });
  }
  return questions;
}

const COMPLAINTS = new WeakMap<Grounded, Map<string, readonly CheckFinding[]>>();

/** A complaint as a finding of a check, kept so that the core need not work it out again. */
function asFindings(grounded: Grounded, complaint: CompiledComplaint): readonly CheckFinding[] {
  const kept = COMPLAINTS.get(grounded) ?? new Map<string, readonly CheckFinding[]>();
  COMPLAINTS.set(grounded, kept);
  const known = kept.get(complaint.id);
  if (known !== undefined) return known;
  const links = grounded.links.get(complaint.id) ?? [];
  const made = [
    {
      parents: Int32Array.from(links, (l) => l.suspect),
      q: [Float64Array.from(links, (l) => 1 - showingStrength(l.showings))],
      leakQ: [1 - complaint.leak],
    },
  ];
  kept.set(complaint.id, made);
  return made;
}

/** Expected information of a yes/no answer, from the chance of "yes" under each component. */
function yesNoGain(
  components: readonly Component[],
  merged: Int32Array,
  chances: readonly number[],
): { gainBits: number; yes: number } {
  const values = merged.reduce((most, value) => Math.max(most, value), -1) + 1;
  const ofValue = new Float64Array(values);
  const yesOf = new Float64Array(values);
  let weight = 0;
  let yes = 0;
  components.forEach(({ probability }, c) => {
    const value = merged[c] as number;
    const both = probability * (chances[c] ?? 0);
    ofValue[value] = (ofValue[value] as number) + probability;
    yesOf[value] = (yesOf[value] as number) + both;
    weight += probability;
    yes += both;
  });
  if (weight <= 0) return { gainBits: 0, yes: 0 };
  let within = 0;
  for (let value = 0; value < values; value++) {
    const own = ofValue[value] as number;
    if (own > 0) within += (own / weight) * uncertain((yesOf[value] as number) / own);
  }
  return { gainBits: Math.max(0, uncertain(yes / weight) - within), yes: yes / weight };
}

function uncertain(p: number): number {
  return entropyBits([p, 1 - p]);
}

/** One way in which a cause shows a complaint, with its share of what that cause shows. */
interface Way {
  readonly showing: CompiledShowing;
  readonly place: PlaceRecord;
  readonly share: number;
}

/** The causes that show a complaint, each with its ways, and which of them each component has. */
interface Ways {
  readonly causes: readonly (readonly Way[])[];
  /** Places in `causes`, one list a component. */
  readonly of: readonly (readonly number[])[];
}

/** The ways of every cause of the components, as the features answered so far weigh them. */
function waysToShow(grounded: Grounded, gathered: GatheredComplaint, components: readonly Component[]): Ways {
  const weights = featureWeights(grounded, gathered.features);
  const links = grounded.links.get(gathered.complaint.id) ?? [];
  const wanted = new Set(components.flatMap((c) => c.set));
  const at = new Map<number, number>();
  const causes: Way[][] = [];
  for (const { suspect, showings } of links) {
    const place = grounded.places.byId.get(grounded.suspects[suspect]?.place ?? "");
    if (place === undefined || !wanted.has(suspect)) continue;
    const ways = showings.map((showing) => ({
      showing,
      weight: showing.strength.p * showingFit(grounded, suspect, showing, gathered.features, weights),
    }));
    const total = ways.reduce((sum, w) => sum + w.weight, 0);
    at.set(suspect, causes.length);
    causes.push(ways.map(({ showing, weight }) => ({ showing, place, share: weight / total })));
  }
  return { causes, of: components.map((c) => c.set.flatMap((i) => at.get(i) ?? [])) };
}

/** Chance of a "yes" under each component, with the share of its group's tempered weight that the answer would get. */
function featureChances(
  grounded: Grounded,
  gathered: GatheredComplaint,
  feature: CompiledFeature,
  ways: Ways,
): number[] {
  const temper = grounded.knowledge.groups.groups.find((g) => g.id === feature.group)?.temper ?? 0;
  const weight = (gathered.features.filter((f) => f.feature.group === feature.group).length + 1) ** -temper;
  const soften = (p: number): number => p ** weight / (p ** weight + (1 - p) ** weight);
  const chances = ways.causes.map((own) =>
    own.reduce(
      (p, { share, showing, place }) =>
        p + share * trusted(grounded, feature, featureChance(feature, showing, place), "report"),
      0,
    ),
  );
  const alone = chances.map(soften);
  const background = soften(feature.background);
  return ways.of.map((causes) => {
    const [first] = causes;
    if (first === undefined) return background;
    if (causes.length === 1) return alone[first] ?? background;
    return soften(causes.reduce((sum, cause) => sum + (chances[cause] ?? 0), 0) / causes.length);
  });
}

/** A feature whose opposite was answered "yes" is not worth asking. */
function ruledOut(feature: CompiledFeature, gathered: GatheredComplaint): boolean {
  return gathered.features.some((f) => f.present && f.feature.id === feature.opposite);
}

function contextFactor(grounded: Grounded, suspect: number, context: string): number {
  const contexts = grounded.faults.get(grounded.suspects[suspect]?.fault ?? "")?.contexts ?? {};
  return Object.hasOwn(contexts, context) ? (contexts[context] ?? 1) : 1;
}
