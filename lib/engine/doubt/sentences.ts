import type { Answer } from "../answers.ts";
import { findingName } from "../finding-id.ts";
import type { Grounded } from "../ground.ts";
import { rowName, suspectName } from "../names.ts";
import type { AnswerWeight } from "../why.ts";
import type { MindChanger } from "./mind-changers.ts";
import type { Misfit } from "./misfit.ts";
import type { Steadiness } from "./steadiness.ts";

/** Log-odds that an answer added, in words. */
export function weightWords(logOdds: number): string {
  const factor = Math.exp(Math.abs(logOdds));
  const way = logOdds >= 0 ? "for" : "against";
  if (factor < 1.15) return "hardly matters";
  const size = factor < 2 ? "slightly" : factor < 5 ? "clearly" : factor < 20 ? "strongly" : "very strongly";
  const times = factor < 10 ? factor.toFixed(1) : factor > 1000 ? "over 1000" : String(Math.round(factor));
  return `${size} ${way} it (odds ${logOdds >= 0 ? "times" : "divided by"} ${times})`;
}

/** What an answer says of a suspect: "play at 3 and 9 o'clock, front left: no - clearly against it (odds divided by 4)". */
export function whySentence(grounded: Grounded, weight: AnswerWeight): string {
  return `${answerWords(grounded, weight)} - ${weightWords(weight.logOdds)}`;
}

/** How far the leader's place can be trusted. */
export function steadyWords(grounded: Grounded, { kind, leader, rivals, draws }: Steadiness): string {
  const { knowledge } = grounded;
  const first = rivals[0];
  const held = `it stays in front in ${percent(leader.share)} of ${draws} draws with the weights of this knowledge moved within their doubt`;
  if (kind === "steady" || first === undefined) return `Steady: ${held}.`;
  const other = rowName(knowledge, first.row);
  if (kind === "either-of-two") {
    return `Could be either of two: ${rowName(knowledge, leader.row)} (${percent(leader.share)}) or ${other} (${percent(first.share)}), by how the weights of this knowledge are moved within their doubt.`;
  }
  return `Open: ${held}; ${other} takes over most often (${percent(first.share)}).`;
}

/** What to look at again, and why; undefined when everything fits. */
export function misfitWords(grounded: Grounded, { lookAgain }: Misfit): string | undefined {
  if (lookAgain === undefined) return undefined;
  const leader = nameOf(grounded, lookAgain.leaderWithout);
  return `${answerWords(grounded, lookAgain)} - this does not fit what else is known: given all other answers it was to be expected ${percent(lookAgain.givenOthers)} of the time. Without it ${leader} leads. Look at it again before going on.`;
}

/** Said when nothing in the knowledge explains the complaint; undefined otherwise. */
export function unexplainedWords({ unexplained, notInKnowledge }: Misfit): string | undefined {
  return unexplained
    ? `Nothing in this knowledge explains the complaint well: a cause that is not in it has ${percent(notInKnowledge)}. Look further with other means, or hand it over.`
    : undefined;
}

/** What a result would do: "play at 3 and 9 o'clock, front left: yes - then the wheel bearing leads (80 %)". */
export function mindWords(grounded: Grounded, changer: MindChanger): string {
  const found = changer.answers.filter((a) => a.state === "present");
  const said =
    found.length > 0
      ? found.map((a) => answerWords(grounded, a)).join("; ")
      : changer.answers.length > 1
        ? "nothing found"
        : changer.answers.map((a) => answerWords(grounded, a)).join("; ");
  return `${said} - then ${nameOf(grounded, changer.leader)} leads (${percent(changer.explains)})`;
}

function answerWords(
  grounded: Grounded,
  { finding, state, level }: { finding: string; state: Answer["state"]; level?: string | undefined },
): string {
  const name = findingName(grounded.knowledge, finding);
  if (state === "unknown") return `${name}: not known`;
  if (state === "absent") return `${name}: no`;
  return `${name}: ${level === undefined ? "yes" : level.replaceAll("-", " ")}`;
}

function nameOf(grounded: Grounded, id: string): string {
  const suspect = grounded.suspects[grounded.suspectIndex.get(id) ?? -1];
  return suspect === undefined ? id : suspectName(grounded.knowledge, suspect);
}

function percent(p: number): string {
  if (p > 0 && p < 0.01) return "under 1 %";
  return p > 0.99 && p < 1 ? "over 99 %" : `${Math.round(100 * p)} %`;
}
