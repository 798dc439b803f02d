import type { Knowledge } from "../knowledge/schema/compiled.ts";
import { cardAdvice } from "./card-advice.ts";
import { cardFinding, findingIfKnown } from "./card-findings.ts";
import { explains, type KnownSuspect, proves, suspectIfKnown } from "./card-suspect.ts";
import { cardSeverity, cardWork } from "./card-work.ts";
import type { CaseAnswer, CaseState } from "./case-state.ts";
import type { CardFinding, CardSuspect, JobCard } from "./job-card-types.ts";
import { openMatters } from "./open-matters.ts";

/** What the card needs of a weighing; the engine's result has it all. */
export interface WeighedForCard {
  readonly ranking: readonly { readonly suspect: { readonly id: string }; readonly present: number }[];
  readonly notInKnowledge: number;
  readonly notices: readonly { readonly say: string }[];
}

/** From this chance of being present on, a suspect outside the verdict is worth a line. */
const ALSO_LIKELY_FROM = 0.5;

const SEVERITY_ORDER = { dangerous: 0, major: 1, minor: 2 } as const;

const STATEMENTS = [
  "The vehicle maker's data and the rules of the place decide; where they differ from this card, follow them. Work on steering, suspension, wheels and brakes belongs in the hands of those who are licensed or trained for it.",
  "This card records what was found on the parts that were looked at, and what follows from it. It says nothing about the rest of the car and is no statement of roadworthiness.",
] as const;

const INVENTED_NOTICE = "Invented case: no real car, customer or workshop.";

/**
 * The job card: complaint, proof, verdict, work and what stays open, in words.
 *
 * Shape   release: SHA-256 of the knowledge given; left out, the card names what the case was opened with.
 * Errors  none: ids that the knowledge does not hold stand as they are and are listed under what stays open.
 */
export function jobCard(
  knowledge: Knowledge,
  state: CaseState,
  weighed: WeighedForCard,
  releaseSha?: string,
): JobCard {
  const named = state.verdict?.suspects ?? [];
  const suspects = named.flatMap((id) => suspectIfKnown(knowledge, id) ?? []);
  const kinds = sortAnswers(knowledge, state.answers);
  const work = suspects.map((suspect) => cardWork(knowledge, suspect));
  const severity = suspects
    .map((suspect) => cardSeverity(knowledge, suspect))
    .sort((a, b) => SEVERITY_ORDER[a.word] - SEVERITY_ORDER[b.word]);
  const unexplained = kinds.observed.filter(
    (answer) => answer.state === "present" && !suspects.some((one) => explains(knowledge, one, answer)),
  );
  const toFinding = (answer: CaseAnswer): CardFinding => cardFinding(knowledge, answer);
  return {
    caseId: state.caseId,
    ...(state.openedAt !== undefined && { openedAt: state.openedAt }),
    customer: state.customer,
    vehicle: state.vehicle,
    ...(state.plate !== undefined && { plate: state.plate }),
    ...(state.invented && { inventedNotice: INVENTED_NOTICE }),
    complaint: { words: state.text, told: kinds.told.map(toFinding) },
    contexts: kinds.contexts.map((answer) => toFinding(answer).name),
    ...(state.advised !== undefined && { advised: cardAdvice(knowledge, state.advised) }),
    found: kinds.observed.map(toFinding),
    ...verdictOf(knowledge, state, suspects),
    work,
    workMinutes: work.reduce((sum, one) => sum + one.minutes, 0),
    severity,
    cautions: [...new Set(work.flatMap((one) => one.cautions))],
    alsoLikely: alsoLikely(knowledge, weighed, new Set(named)),
    unexplained: unexplained.map(toFinding),
    open: openMatters(knowledge, state, weighed, suspects),
    stopNotices: [
      ...new Set([
        ...weighed.notices.map((notice) => notice.say),
        ...suspects.flatMap((suspect) => suspect.fault.stop?.say ?? []),
      ]),
    ],
    release: { version: knowledge.version, sha: releaseSha ?? state.release },
    statements: STATEMENTS,
  };
}

function sortAnswers(knowledge: Knowledge, answers: readonly CaseAnswer[]) {
  const told: CaseAnswer[] = [];
  const contexts: CaseAnswer[] = [];
  const observed: CaseAnswer[] = [];
  for (const answer of answers) {
    if (answer.state === "unknown") continue;
    const kind = findingIfKnown(knowledge, answer.finding)?.kind;
    if (kind === "context") {
      if (answer.state === "present") contexts.push(answer);
    } else if (kind === "observation") observed.push(answer);
    else told.push(answer);
  }
  return { told, contexts, observed };
}

function verdictOf(
  knowledge: Knowledge,
  state: CaseState,
  suspects: readonly KnownSuspect[],
): Pick<JobCard, "verdict"> {
  const { verdict } = state;
  if (verdict === undefined) return {};
  const proven = (suspect: KnownSuspect): boolean =>
    state.answers.some((answer) => proves(knowledge, suspect, answer));
  return {
    verdict: {
      suspects: verdict.suspects.map((id) => ({
        suspect: id,
        name: suspects.find((suspect) => suspect.id === id)?.name ?? id,
      })),
      // What was retracted or answered otherwise since is no proof any more.
      proof: verdict.proof.flatMap((finding) => {
        const answer = state.answers.find((one) => one.finding === finding);
        return answer === undefined || answer.state === "unknown" ? [] : cardFinding(knowledge, answer);
      }),
      ...(verdict.note !== undefined && { note: verdict.note }),
      by: verdict.by,
      at: verdict.at,
      unproven: suspects.filter((suspect) => !proven(suspect)).map((suspect) => suspect.name),
    },
  };
}

function alsoLikely(
  knowledge: Knowledge,
  weighed: WeighedForCard,
  named: ReadonlySet<string>,
): CardSuspect[] {
  return weighed.ranking
    .filter(({ suspect, present }) => present >= ALSO_LIKELY_FROM && !named.has(suspect.id))
    .map(({ suspect, present }) => ({
      suspect: suspect.id,
      name: suspectIfKnown(knowledge, suspect.id)?.name ?? suspect.id,
      present,
    }));
}
