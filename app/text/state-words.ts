import { levelWords } from "./names.ts";

type StateNames = Readonly<Record<"present" | "absent" | "unknown", string>>;

/** What was asked for. */
export const ANSWERED: StateNames = { present: "yes", absent: "no", unknown: "not known" };
/** What was looked for on the car. */
export const LOOKED_FOR: StateNames = { present: "there", absent: "not there", unknown: "cannot tell" };

/** How a finding came out, in words: its grade where it has several, else by these names. */
export function stateWords(
  { state, level }: { readonly state: keyof StateNames; readonly level?: string | undefined },
  names = ANSWERED,
): string {
  // An observation with one grade calls it "present".
  if (state === "present" && level !== undefined && level !== "present") return levelWords(level);
  return names[state];
}
