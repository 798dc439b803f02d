/** What is said of a finding. "unknown" changes nothing; it records that it was asked. */
export type AnswerState = "present" | "absent" | "unknown";

/** One answer, told by somebody who is not at the car or checked by hand. */
export interface Answer {
  /**
   * Id of the finding: a complaint (`noise`), a feature of one (`noise:small-bumps`), an observation at a place
   * (`play-3-9@front-left`) or somewhere (`play-3-9`), or a context (`pothole-strike`). A bare feature
   * (`small-bumps`) is said of every present complaint that has it.
   */
  readonly finding: string;
  readonly state: AnswerState;
  /** Grade of a graded observation. Present without one: at least the first; absent with one: not as much as that. */
  readonly level?: string | undefined;
  /** Measured value in the observation's unit; it decides the grade. */
  readonly value?: number | undefined;
  readonly by: "report" | "check";
}

/** Something about an answer that the reader should know; it never stops the weighing. */
export interface AnswerProblem {
  readonly code: "contradictory-answers" | "implied-complaint" | "not-on-this-car" | "no-effect";
  readonly finding: string;
  readonly message: string;
}
