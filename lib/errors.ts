/** Codes of every expected failure; the text beside each is what a caller may count on. */
export type ErrorCode =
  | "unknown-id" // an id that the knowledge does not hold
  | "bad-request" // a request that does not follow its schema
  | "bad-record" // a knowledge record that does not follow its schema or its lint
  | "probability-out-of-range" // a probability, strength or leak outside 0..1
  | "empty-model" // no suspect to reason about
  | "impossible-evidence" // answers that no cause and no leak can produce
  | "contradictory-answers" // two answers that cannot both hold
  | "bad-logic" // a JsonLogic rule with a forbidden operator or too deep
  | "not-found" // a file, release or case that is not there
  | "not-readable"; // text that is not JSON, or a file that cannot be read

/**
 * An expected failure: a code for programs, a sentence for people.
 *
 * The message says what is wrong, where, and how to mend it.
 */
export class CornerwiseError extends Error {
  readonly code: ErrorCode;
  readonly details: Readonly<Record<string, unknown>>;

  constructor(
    code: ErrorCode,
    message: string,
    details: Readonly<Record<string, unknown>> = {},
    options?: ErrorOptions,
  ) {
    super(message, options);
    this.name = "CornerwiseError";
    this.code = code;
    this.details = details;
  }
}
