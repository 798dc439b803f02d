/**
 * Whether a tool as a check names it is among those that a workshop has not at hand.
 *
 * Of "this or that" one is enough, but the whole of it may have been said to be missing.
 */
export function isMissing(tool: string, missing: readonly string[]): boolean {
  if (missing.includes(tool)) return true;
  return tool.split(" or ").every((one) => missing.some((m) => one.includes(m)));
}

/** Checks, by id, that need a tool that is not at hand. */
export function withoutTools(
  checks: readonly { readonly id: string; readonly tools: readonly string[] }[],
  missing: readonly string[],
): string[] {
  if (missing.length === 0) return [];
  return checks.filter(({ tools }) => tools.some((tool) => isMissing(tool, missing))).map(({ id }) => id);
}
