import type { Answer, AnswerProblem } from "./answers.ts";
import { complaintAbsent, complaintBit } from "./complaint-bit.ts";
import type { Evidence, NegativeFactor, PositiveBit } from "./core/index.ts";
import { type Gathered, gatherAnswers, type GatheredObservation } from "./gathered.ts";
import type { Grounded } from "./ground.ts";
import { joinNodes, type ObservationNode } from "./observation-nodes.ts";
import { observationEvidence } from "./observation-evidence.ts";

/** Answers as numbers for the core, and what to explain. */
export interface Assembled {
  readonly evidence: Evidence;
  /** Indices of the positive bits to explain. */
  readonly targets: readonly number[];
  /** What `targets` are: the complaints, or every present finding when nobody complained. */
  readonly target: "complaint" | "findings" | "none";
  /** Natural log of what complaints were scaled by; added to the log of the evidence it compares sets of answers. */
  readonly logScale: number;
  readonly gathered: Gathered;
  readonly problems: readonly AnswerProblem[];
}

/** Most targets that are explained at once; more complaints than that are weighed but not explained. */
const MOST_TARGETS = 12;

/**
 * Turns answers into factors over the suspects of a grounded car.
 *
 * Errors: `unknown-id` for a finding, place or grade that the knowledge does not hold.
 */
export function assembleEvidence(grounded: Grounded, answers: readonly Answer[]): Assembled {
  return evidenceOf(grounded, gatherAnswers(grounded, answers));
}

/** As `assembleEvidence`, of answers that are sorted already. */
export function evidenceOf(grounded: Grounded, gathered: Gathered): Assembled {
  const problems = [...gathered.problems];
  const positives: PositiveBit[] = [];
  const negatives: NegativeFactor[] = [];
  const complaints: number[] = [];
  let logScale = 0;
  const { reports } = grounded.knowledge;
  for (const { complaint, present, by, features } of gathered.complaints.values()) {
    if (present) {
      complaints.push(positives.length);
      const { bit, scale } = complaintBit(grounded, complaint, features);
      positives.push(bit);
      logScale += Math.log(scale);
    } else negatives.push(complaintAbsent(grounded, complaint, by === "report" ? reports.reliability : 1));
  }
  for (const answer of gathered.observations) {
    const node = nodeFor(grounded, answer);
    if (node === undefined) {
      problems.push({
        code: "not-on-this-car",
        finding: answer.finding,
        message: `Nothing on this car can give "${answer.finding}", so it changes nothing.`,
      });
      continue;
    }
    const trust = answer.by === "report" ? reports : { reliability: 1, falseAlarm: 0 };
    const { negative, positive } = observationEvidence(node, answer.grade, trust);
    if (negative !== undefined) negatives.push(negative);
    if (positive !== undefined) positives.push(positive);
  }
  const found = positives.map((_, k) => k);
  const targets = (complaints.length > 0 ? complaints : found).slice(0, MOST_TARGETS);
  return {
    evidence: { prior: grounded.prior, negatives, positives },
    targets,
    target: complaints.length > 0 ? "complaint" : found.length > 0 ? "findings" : "none",
    logScale,
    gathered,
    problems,
  };
}

/** The node that an answer speaks of: at its place, joined over the places that overlap a wider one, or anywhere. */
export function nodeFor(
  grounded: Grounded,
  answer: Pick<GatheredObservation, "finding" | "observation" | "place">,
): ObservationNode | undefined {
  const { observation, place } = answer;
  const exact = place === undefined ? undefined : grounded.nodes.get(`${observation.id}@${place}`);
  if (exact !== undefined) return exact;
  const nodes = observation.places
    .filter((p) => place === undefined || grounded.places.overlap(p, place))
    .flatMap((p) => grounded.nodes.get(`${observation.id}@${p}`) ?? []);
  return nodes.length === 0 ? undefined : joinNodes(answer.finding, nodes, place);
}
