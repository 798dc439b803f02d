import type { Answer } from "../../lib/engine/index.ts";

/**
 * What the engine is told of an answer, and nothing else, with its fields always in one order: the worker finds again by it
 * what it worked out ahead.
 */
export function answerOfCase({ finding, state, level, value, by }: Answer): Answer {
  return {
    finding,
    state,
    ...(level !== undefined && { level }),
    ...(value !== undefined && { value }),
    by,
  };
}
