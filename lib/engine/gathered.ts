import { CornerwiseError } from "../errors.ts";
import type { CompiledComplaint, CompiledObservation } from "../knowledge/schema/compiled.ts";
import type { Answer, AnswerProblem } from "./answers.ts";
import type { FeatureAnswer } from "./complaint-bit.ts";
import { parseFinding } from "./finding-id.ts";
import type { Grounded } from "./ground.ts";
import type { GradeAnswer } from "./observation-evidence.ts";

/** A complaint as it was answered, with all that was told of it. */
export interface GatheredComplaint {
  readonly complaint: CompiledComplaint;
  readonly present: boolean;
  readonly by: Answer["by"];
  readonly features: FeatureAnswer[];
}

/** An observation as it was answered. */
export interface GatheredObservation {
  readonly finding: string;
  readonly observation: CompiledObservation;
  readonly place: string | undefined;
  readonly grade: GradeAnswer;
  readonly by: Answer["by"];
}

/** Answers sorted by what they speak of, in the order of finding ids, each finding once. */
export interface Gathered {
  readonly complaints: ReadonlyMap<string, GatheredComplaint>;
  readonly observations: readonly GatheredObservation[];
  readonly problems: readonly AnswerProblem[];
}

/**
 * Sorts answers by what they speak of. The last answer to a finding counts; the order is otherwise irrelevant.
 *
 * A present feature makes its complaint present. A bare feature is said of every present complaint that has it.
 *
 * Errors: `unknown-id` for a finding or grade that the knowledge does not hold.
 */
export function gatherAnswers(grounded: Grounded, answers: readonly Answer[]): Gathered {
  const problems: AnswerProblem[] = [];
  const last = new Map<string, Answer>();
  for (const answer of answers) {
    const before = last.get(answer.finding);
    if (before !== undefined && before.by === answer.by && contradicts(before, answer)) {
      problems.push({
        code: "contradictory-answers",
        finding: answer.finding,
        message: `"${answer.finding}" was answered both ${before.state} and ${answer.state}; the later answer counts.`,
      });
    }
    last.set(answer.finding, answer);
  }
  const complaints = new Map<string, GatheredComplaint>();
  const observations: GatheredObservation[] = [];
  const features: { answer: Answer; feature: FeatureAnswer["feature"]; of: string | undefined }[] = [];
  for (const answer of [...last.values()].sort((a, b) => (a.finding < b.finding ? -1 : 1))) {
    const finding = parseFinding(grounded.knowledge, answer.finding);
    if (answer.state === "unknown" || finding.kind === "context") continue;
    const present = answer.state === "present";
    if (finding.kind === "complaint") {
      complaints.set(finding.complaint.id, {
        complaint: finding.complaint,
        present,
        by: answer.by,
        features: [],
      });
    } else if (finding.kind === "observation") {
      observations.push({
        finding: answer.finding,
        observation: finding.observation,
        place: finding.place,
        grade: gradeOf(answer, finding.observation),
        by: answer.by,
      });
    } else features.push({ answer, feature: finding.feature, of: finding.complaint?.id });
  }
  attachFeatures(grounded, complaints, features, problems);
  return { complaints, observations, problems };
}

function contradicts(a: Answer, b: Answer): boolean {
  return a.state !== b.state && a.state !== "unknown" && b.state !== "unknown";
}

function attachFeatures(
  grounded: Grounded,
  complaints: Map<string, GatheredComplaint>,
  features: readonly { answer: Answer; feature: FeatureAnswer["feature"]; of: string | undefined }[],
  problems: AnswerProblem[],
): void {
  for (const { answer, of } of features) {
    if (of === undefined || answer.state !== "present" || complaints.get(of)?.present === true) continue;
    const complaint = grounded.knowledge.complaints.find((c) => c.id === of);
    if (complaint === undefined) continue;
    problems.push({
      code: "implied-complaint",
      finding: answer.finding,
      message: `"${answer.finding}" is present, so "${of}" is taken as present too.`,
    });
    complaints.set(of, { complaint, present: true, by: answer.by, features: [] });
  }
  const told = new Set(features.flatMap((f) => (f.of === undefined ? [] : [`${f.of}:${f.feature.id}`])));
  for (const { answer, feature, of } of features) {
    const hosts = feature.complaints.filter(
      (c) =>
        complaints.get(c)?.present === true &&
        (of === undefined ? !told.has(`${c}:${feature.id}`) : c === of),
    );
    for (const host of hosts)
      complaints.get(host)?.features.push({ feature, present: answer.state === "present", by: answer.by });
    if (hosts.length === 0 && of === undefined) {
      problems.push({
        code: "no-effect",
        finding: answer.finding,
        message: `"${answer.finding}" belongs to no complaint that is present, so it changes nothing.`,
      });
    }
  }
}

function gradeOf(answer: Answer, observation: CompiledObservation): GradeAnswer {
  const { levels, measure } = observation;
  if (answer.value !== undefined && measure !== undefined) {
    if (!Number.isFinite(answer.value)) {
      throw new CornerwiseError(
        "bad-request",
        `${answer.finding}: the value is no number; give it in ${measure.unit}.`,
        {
          finding: answer.finding,
        },
      );
    }
    const value = answer.value;
    const reached = measure.atLeast.filter((bound) => value >= bound).length;
    return { from: Math.min(reached, levels.length) - 1, below: reached };
  }
  if (answer.level === undefined || levels.length === 1) {
    return answer.state === "present" ? { from: 0, below: undefined } : { from: -1, below: 0 };
  }
  const level = levels.indexOf(answer.level);
  if (level < 0) {
    throw new CornerwiseError(
      "unknown-id",
      `${answer.finding}: "${answer.level}" is no grade of it; use ${levels.map((l) => `"${l}"`).join(" or ")}.`,
      { finding: answer.finding, level: answer.level },
    );
  }
  return answer.state === "present" ? { from: level, below: level + 1 } : { from: -1, below: level };
}
