import { mayBeTried } from "../../knowledge/may-be-tried.ts";
import type { CompiledCheck, Knowledge } from "../../knowledge/schema/compiled.ts";
import { placedChecks, type PlacedCheck } from "../check-places.ts";
import { checkBits, type CheckFinding } from "../core/index.ts";
import { finerComponents } from "../finer-components.ts";
import type { Answer } from "../answers.ts";
import type { Grounded } from "../ground.ts";
import { mergeByRepair } from "../merge-by-repair.ts";
import { capital, placeName } from "../names.ts";
import type { ObservationNode } from "../observation-nodes.ts";
import { bearsOn, canBeDone } from "../propose.ts";
import type { Weighing } from "../weigh.ts";
import { choiceOf, doNotKnow, type LayChoice, type LayQuestion } from "./lay-question.ts";
import type { Rated } from "./questions.ts";
import type { Told } from "./told.ts";

/**
 * The checks that anybody may try on the standing car without tools, rated as reports: what is seen by somebody who knows
 * nothing of cars weighs no more than what is told. Of one check the best place only.
 */
export function safeTries(
  grounded: Grounded,
  answers: readonly Answer[],
  weighing: Weighing,
  told: Told,
  who: "owner" | "driver",
): Rated[] {
  const { explanation } = weighing;
  if (explanation === undefined) return [];
  const components = finerComponents(explanation);
  const merged = mergeByRepair(grounded, components);
  const named = new Set(components.flatMap((c) => c.set));
  const best = new Map<string, Rated>();
  for (const placed of tryPlaces(grounded)) {
    const [{ check }] = placed;
    if (!mayBeTried(grounded.knowledge, check)) continue;
    const open = placed
      .filter((p) => canBeDone(grounded, answers, weighing, p, { who }))
      .map((p) => ({ place: p.place, nodes: openNodes(p, told) }))
      .filter(({ nodes }) => nodes.length > 0);
    const nodes = open.flatMap((p) => p.nodes);
    if (!bearsOn({ nodes }, named)) continue;
    const question = tryQuestion(grounded.knowledge, check, placed.length, open);
    if (question === undefined || told.finding(question.id)) continue;
    const findings = nodes.map((node) => asReport(grounded.knowledge, node));
    const score = checkBits(components, merged, findings) / check.minutes;
    if (score > (best.get(check.id)?.score ?? 0)) best.set(check.id, { question, score });
  }
  return [...best.values()];
}

type Places = readonly [PlacedCheck, ...PlacedCheck[]];

/** The places of each check that are tried at once: all of them for one finding, else each by itself. */
function tryPlaces(grounded: Grounded): Places[] {
  const worded = placedChecks(grounded).filter((p) => p.check.lay !== undefined);
  return [...new Set(worded.map((p) => p.check))].flatMap((check): Places[] => {
    const [first, ...others] = worded.filter((p) => p.check === check);
    if (first === undefined) return [];
    return check.lay?.settles.length === 1
      ? [[first, ...others]]
      : [first, ...others].map((p): Places => [p]);
  });
}

function openNodes({ check, nodes }: PlacedCheck, told: Told): ObservationNode[] {
  return nodes.filter(
    ({ observation, place }) =>
      check.lay?.settles.includes(observation.id) === true && !told.observation(observation.id, place),
  );
}

/** The lowest grade of a finding, as a report tells it. */
function asReport({ reports }: Knowledge, node: ObservationNode): CheckFinding {
  return {
    parents: node.parents,
    q: [Float64Array.from(node.strengths[0] ?? [], (s) => 1 - s * reports.reliability)],
    leakQ: [(1 - (node.leak[0] ?? 0)) * (1 - reports.falseAlarm)],
  };
}

interface OpenPlace {
  readonly place: string;
  readonly nodes: readonly ObservationNode[];
}

function tryQuestion(
  knowledge: Knowledge,
  check: CompiledCheck,
  places: number,
  open: readonly OpenPlace[],
): LayQuestion | undefined {
  const { lay } = check;
  const [first] = open;
  if (lay === undefined || first === undefined || knowledge.lay === undefined) return undefined;
  const together = places > 1;
  const name = together ? "" : nameOf(knowledge, first.place);
  const at = (text: string): string => text.replaceAll("{place}", name);
  return {
    id: together || check.places.length === 1 ? `try:${check.id}` : `try:${check.id}@${first.place}`,
    kind: "try",
    question: at(lay.question),
    ...(lay.help !== undefined && { help: at(lay.help) }),
    ...(lay.picture !== undefined && { picture: lay.picture }),
    steps: lay.steps.map(at),
    cautions: lay.cautions,
    choices: together ? whichPlace(knowledge, knowledge.lay, open) : whatIsSeen(knowledge.lay, check, first),
  };
}

type LayOfKnowledge = NonNullable<Knowledge["lay"]>;

/** One finding at several places: which of them is it? */
function whichPlace(knowledge: Knowledge, lay: LayOfKnowledge, open: readonly OpenPlace[]): LayChoice[] {
  const at = open.map(({ place, nodes }) => ({ place, findings: nodes.map((n) => n.id) }));
  const all = at.flatMap(({ findings }) => findings);
  const [bare = ""] = open.flatMap(({ nodes }) => nodes.map((n) => n.observation.id));
  return [
    ...at.map(({ place, findings }) => ({
      label: capital(nameOf(knowledge, place)),
      answers: all.map((finding) => ({
        finding,
        state: findings.includes(finding) ? ("present" as const) : ("absent" as const),
      })),
    })),
    choiceOf(lay.tries.several, "present", bare),
    choiceOf(lay.tries.none, "absent", ...all),
    doNotKnow(all),
  ];
}

/** Several findings at one place, the plainest first: which of them is it? */
function whatIsSeen(lay: LayOfKnowledge, check: CompiledCheck, { place, nodes }: OpenPlace): LayChoice[] {
  const seen = (check.lay?.settles ?? []).flatMap((id) => {
    const [node, ...more] = nodes.filter((n) => n.observation.id === id);
    if (node === undefined) return [];
    // A place that holds several is told as a whole.
    return [{ observation: node.observation, finding: more.length === 0 ? node.id : `${id}@${place}` }];
  });
  const all = seen.map((s) => s.finding);
  if (seen.length === 1 && check.lay?.settles.length === 1) {
    return [choiceOf("Yes", "present", ...all), choiceOf("No", "absent", ...all), doNotKnow(all)];
  }
  return [
    ...seen.map(({ observation, finding }) =>
      choiceOf(capital(observation.lay?.choice ?? observation.name), "present", finding),
    ),
    choiceOf(lay.tries.none, "absent", ...all),
    doNotKnow(all),
  ];
}

function nameOf(knowledge: Knowledge, place: string): string {
  const names = knowledge.lay?.places ?? {};
  return Object.hasOwn(names, place) ? (names[place] ?? place) : placeName(knowledge, place);
}
