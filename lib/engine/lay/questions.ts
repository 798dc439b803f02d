import type { CompiledFeature, Knowledge } from "../../knowledge/schema/compiled.ts";
import type { LayWords } from "../../knowledge/schema/lay.ts";
import { parseFinding } from "../finding-id.ts";
import type { Grounded } from "../ground.ts";
import { capital } from "../names.ts";
import type { ProposedCheck } from "../propose.ts";
import type { Weighing } from "../weigh.ts";
import { choiceOf, doNotKnow, type LayQuestion } from "./lay-question.ts";
import type { Told } from "./told.ts";

/** A question with what it is expected to teach a minute. */
export interface Rated {
  readonly question: LayQuestion;
  readonly score: number;
}

/**
 * The proposed questions in plain words. Features that rule each other out become one question with a choice each, rated
 * by its best part: to hear which one it is tells at least as much as to hear whether it is that one.
 */
export function plainQuestions(
  grounded: Grounded,
  weighing: Weighing,
  proposed: readonly ProposedCheck[],
  told: Told,
): Rated[] {
  const { knowledge } = grounded;
  const present = [...weighing.assembled.gathered.complaints.values()].filter((c) => c.present);
  const rated: Rated[] = [];
  const grouped = new Set<string>();
  for (const { settles, score, name } of proposed) {
    const [settled] = settles;
    if (settled === undefined || told.finding(settled.finding)) continue;
    const { finding } = settled;
    const parsed = parseFinding(knowledge, finding);
    // Its question says "it": where several things are complained of, the one that is meant is said before.
    const about = parsed.kind === "feature" && present.length > 1 ? parsed.complaint?.name : undefined;
    if (parsed.kind === "feature") {
      const complaint = parsed.complaint?.id ?? "";
      if (isSilly(parsed.feature, complaint, told)) continue;
      const group = knowledge.lay?.together.find((t) => t.features.includes(parsed.feature.id));
      if (group !== undefined) {
        const key = `${complaint}:${group.id}`;
        if (grouped.has(key) || group.features.some((f) => told.feature(complaint, f) === "present"))
          continue;
        const members = proposed.filter(
          (p) => isOneOf(p, complaint, group.features) && !told.finding(findingOf(p)),
        );
        if (members.length > 1) {
          grouped.add(key);
          rated.push({ score, question: oneOf(knowledge, complaint, group, members, about) });
          continue;
        }
      }
    }
    rated.push({ score, question: yesOrNo(finding, worded(name, wordsOf(knowledge, finding), about)) });
  }
  return rated;
}

/** Would asking it show that nobody has listened? Whoever says that it comes when braking is not asked whether it is always there. */
function isSilly({ lay }: CompiledFeature, complaint: string, told: Told): boolean {
  const { said = [], denied = [] } = lay?.unless ?? {};
  return (
    said.some((f) => told.feature(complaint, f) === "present") ||
    denied.some((f) => told.feature(complaint, f) === "absent")
  );
}

type Together = NonNullable<Knowledge["lay"]>["together"][number];

function findingOf({ settles: [settled] }: ProposedCheck): string {
  return settled?.finding ?? "";
}

function isOneOf(proposed: ProposedCheck, complaint: string, features: readonly string[]): boolean {
  const [of, feature = ""] = findingOf(proposed).split(":");
  return of === complaint && features.includes(feature);
}

/** The likeliest of the features that are open, in the order of the knowledge. */
function oneOf(
  knowledge: Knowledge,
  complaint: string,
  group: Together,
  members: readonly ProposedCheck[],
  about: string | undefined,
): LayQuestion {
  const likeliest = new Set(
    members
      .toSorted((a, b) => (b.yes ?? 0) - (a.yes ?? 0) || (a.id < b.id ? -1 : 1))
      .slice(0, group.most)
      .map(findingOf),
  );
  const offered = group.features.map((f) => `${complaint}:${f}`).filter((f) => likeliest.has(f));
  const { question, help, picture } = group;
  return {
    id: `together:${complaint}:${offered.map((f) => f.split(":")[1]).join("+")}`,
    kind: "question",
    ...worded(question, { question, help, picture }, about),
    steps: [],
    cautions: [],
    choices: [
      ...offered.map((f) => choiceOf(choiceName(knowledge, f), "present", f)),
      choiceOf(group.none, "absent", ...offered),
      doNotKnow(offered),
    ],
  };
}

function choiceName(knowledge: Knowledge, finding: string): string {
  const parsed = parseFinding(knowledge, finding);
  if (parsed.kind !== "feature") return finding;
  const { name, lay } = parsed.feature;
  const example = lay?.example === undefined ? "" : `, ${lay.example}`;
  return capital(`${lay?.choice ?? name}${example}`);
}

function yesOrNo(finding: string, words: Worded): LayQuestion {
  return {
    id: `ask:${finding}`,
    kind: "question",
    ...words,
    steps: [],
    cautions: [],
    choices: [choiceOf("Yes", "present", finding), choiceOf("No", "absent", finding), doNotKnow([finding])],
  };
}

function wordsOf(knowledge: Knowledge, finding: string): LayWords | undefined {
  const parsed = parseFinding(knowledge, finding);
  switch (parsed.kind) {
    case "feature":
      return parsed.feature.lay;
    case "complaint":
      return parsed.complaint.lay;
    case "context":
      return parsed.context.lay;
    case "observation":
      return undefined;
  }
}

type Worded = Pick<LayQuestion, "question" | "help" | "example" | "picture">;

/** The lay words of a question, or its own while the knowledge has none. */
function worded(own: string, lay: LayWords | undefined, about: string | undefined): Worded {
  const question = lay?.question ?? own;
  return {
    question: about === undefined ? question : `${capital(about)}: ${question}`,
    ...(lay?.help !== undefined && { help: lay.help }),
    ...(lay?.example !== undefined && { example: lay.example }),
    ...(lay?.picture !== undefined && { picture: lay.picture }),
  };
}
