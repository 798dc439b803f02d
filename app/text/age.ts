const WORDS = new Intl.RelativeTimeFormat("en-GB", { numeric: "always" });

const STEPS = [
  ["minute", 60],
  ["hour", 3600],
  ["day", 86_400],
  ["week", 7 * 86_400],
  ["month", 30.44 * 86_400],
  ["year", 365.25 * 86_400],
] as const;

/** How long ago a moment was, in the largest unit of which two have gone by: "3 hours ago", "13 days ago", "5 weeks ago". */
export function agoWords(at: string, now: number): string {
  const seconds = Math.max(0, (now - Date.parse(at)) / 1000);
  if (!Number.isFinite(seconds)) return "at an unknown time";
  if (seconds < 60) return "just now";
  const [unit, length] = STEPS.findLast(([, step]) => seconds >= 2 * step) ?? STEPS[0];
  return WORDS.format(-Math.floor(seconds / length), unit);
}
