import { findingName } from "../engine/finding-id.ts";
import type { Knowledge } from "../knowledge/schema/compiled.ts";
import { findingIfKnown } from "./card-findings.ts";
import { explains, type KnownSuspect, proves } from "./card-suspect.ts";
import type { CaseState } from "./case-state.ts";

/** From this share on, a cause outside the knowledge is worth a sentence. */
const OUTSIDE_FROM = 0.1;

const quoted = (text: string): string => `“${text}”`;

/** What stays open on a case, one sentence each: what was not done, not proven, not explained or not known. */
export function openMatters(
  knowledge: Knowledge,
  state: CaseState,
  weighed: { readonly notInKnowledge: number },
  suspects: readonly KnownSuspect[],
): string[] {
  return [
    ...verdictMatters(knowledge, state, suspects),
    ...complaintMatters(knowledge, state, suspects),
    ...state.notPossible.map(({ check, reason }) => `Not done: ${checkName(knowledge, check)} (${reason}).`),
    ...askedMatters(knowledge, state),
    ...(weighed.notInKnowledge >= OUTSIDE_FROM
      ? [
          `Chance that the cause lies outside this knowledge: ${Math.round(weighed.notInKnowledge * 100)} in 100.`,
        ]
      : []),
    ...releaseMatters(knowledge, state),
  ];
}

function verdictMatters(knowledge: Knowledge, state: CaseState, suspects: readonly KnownSuspect[]): string[] {
  if (state.verdict === undefined) return ["No verdict yet."];
  const unknown = state.verdict.suspects.filter((id) => !suspects.some((suspect) => suspect.id === id));
  const unproven = suspects.filter(
    (suspect) => !state.answers.some((answer) => proves(knowledge, suspect, answer)),
  );
  return [
    ...unknown.map((id) => `Named in the verdict but not in this release: ${id}.`),
    ...unproven.map((suspect) => `Not proven by a decisive check: ${suspect.name}.`),
  ];
}

function complaintMatters(
  knowledge: Knowledge,
  state: CaseState,
  suspects: readonly KnownSuspect[],
): string[] {
  if (suspects.length === 0) return [];
  return state.answers
    .filter(
      (answer) =>
        answer.state === "present" &&
        findingIfKnown(knowledge, answer.finding)?.kind === "complaint" &&
        !suspects.some((suspect) => explains(knowledge, suspect, answer)),
    )
    .map(
      (answer) => `Complaint that the verdict does not explain: ${findingName(knowledge, answer.finding)}.`,
    );
}

function askedMatters(knowledge: Knowledge, state: CaseState): string[] {
  return state.answers
    .filter((answer) => answer.state === "unknown")
    .map((answer) => {
      const known = findingIfKnown(knowledge, answer.finding) !== undefined;
      return `Asked, not known: ${known ? findingName(knowledge, answer.finding) : answer.finding}.`;
    });
}

function releaseMatters(knowledge: Knowledge, state: CaseState): string[] {
  const foreign = state.answers
    .filter((answer) => findingIfKnown(knowledge, answer.finding) === undefined)
    .map((answer) => `Answered but not in this release: ${answer.finding}.`);
  const opened = state.knowledgeVersion;
  return opened !== undefined && opened !== knowledge.version
    ? [...foreign, `Opened with release ${opened}, this card is weighed with release ${knowledge.version}.`]
    : foreign;
}

function checkName(knowledge: Knowledge, id: string): string {
  const [checkId, placeId] = id.split("@");
  const check = knowledge.checks.find((one) => one.id === checkId);
  const place = knowledge.places.places.find((one) => one.id === placeId);
  if (check === undefined) return quoted(id);
  return place === undefined ? check.name : `${check.name}, ${place.name}`;
}
