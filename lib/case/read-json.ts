import { CornerwiseError } from "../errors.ts";

export interface JsonLimits {
  /** Most characters of text. */
  readonly characters: number;
  /** Deepest nesting of brackets. */
  readonly depth: number;
}

/** How deep brackets nest, counted on the text: a parser would run out of stack on a file made to do that. */
function nestingDepth(text: string): number {
  let depth = 0;
  let deepest = 0;
  let inString = false;
  for (let i = 0; i < text.length; i++) {
    const c = text[i];
    if (inString) {
      if (c === "\\") i++;
      else if (c === '"') inString = false;
    } else if (c === '"') inString = true;
    else if (c === "{" || c === "[") deepest = Math.max(deepest, ++depth);
    else if (c === "}" || c === "]") depth--;
  }
  return deepest;
}

/**
 * JSON text from outside, within limits; keys that name the prototype are left out.
 *
 * Errors  bad-request: too long or too deep. not-readable: no JSON. Both say what is wrong; the caller says of what.
 */
export function readJson(text: string, limits: JsonLimits): unknown {
  if (text.length > limits.characters) {
    throw new CornerwiseError(
      "bad-request",
      `it has ${text.length} characters, ${limits.characters} at most.`,
    );
  }
  if (nestingDepth(text) > limits.depth) {
    throw new CornerwiseError("bad-request", `it nests deeper than ${limits.depth} levels.`);
  }
  try {
    // Undefined drops the key: a key that names the prototype has no place in data.
    return JSON.parse(text, (key, value: unknown) => (key === "__proto__" ? undefined : value));
  } catch (cause) {
    const reason = cause instanceof Error ? cause.message : String(cause);
    throw new CornerwiseError("not-readable", `it is not JSON: ${reason}.`, {}, { cause });
  }
}
