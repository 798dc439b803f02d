const FRACTIONS: readonly (readonly [number, string])[] = [
  [1 / 50, "1 in 50"],
  [1 / 30, "1 in 30"],
  [1 / 20, "1 in 20"],
  [1 / 15, "1 in 15"],
  [1 / 10, "1 in 10"],
  [1 / 8, "1 in 8"],
  [1 / 6, "1 in 6"],
  [1 / 5, "1 in 5"],
  [1 / 4, "1 in 4"],
  [1 / 3, "1 in 3"],
  [2 / 5, "2 in 5"],
  [1 / 2, "1 in 2"],
  [3 / 5, "3 in 5"],
  [2 / 3, "2 in 3"],
  [3 / 4, "3 in 4"],
  [4 / 5, "4 in 5"],
  [9 / 10, "9 in 10"],
  [19 / 20, "19 in 20"],
];

/** A probability as a person says it: "about 1 in 3". */
export function chanceWords(p: number): string {
  if (p < 0.01) return "less than 1 in 100";
  if (p > 0.98) return "nearly sure";
  let best = FRACTIONS[0] as readonly [number, string];
  for (const f of FRACTIONS) if (distance(f[0], p) < distance(best[0], p)) best = f;
  return `about ${best[1]}`;
}

/** Distance in log-odds, so that 1 in 20 and 1 in 50 are kept apart. */
function distance(a: number, b: number): number {
  return Math.abs(Math.log(a / (1 - a)) - Math.log(b / (1 - b)));
}

const ANYTHING = "anywhere from 0 % to 100 %";

/** Bounds of a chance in words: "between 3 % and 20 %". */
export function betweenWords({ low, high }: { readonly low: number; readonly high: number }): string {
  if (percent(low) === percent(high)) return percent(low);
  // Rounded outwards: what is said must hold the true chance.
  const from = Math.floor(low * 100);
  const to = Math.ceil(high * 100);
  if (from <= 0 && to >= 100) return ANYTHING;
  if (from <= 0) return `at most ${to} %`;
  return to >= 100 ? `at least ${from} %` : `between ${from} % and ${to} %`;
}

/** What is proven of the chance that something is there, as a sentence. */
export function provenWords(bounds: { readonly low: number; readonly high: number }): string {
  const between = betweenWords(bounds);
  if (between === ANYTHING) return "Nothing is certain of this one: the chance is an estimate";
  return `For certain: ${between} that it is there`;
}

/** Whole per cents; the ends are never rounded to certainty. */
export function percent(p: number): string {
  if (p <= 0) return "0 %";
  if (p < 0.01) return "under 1 %";
  if (p > 0.99 && p < 1) return "over 99 %";
  return `${Math.round(p * 100)} %`;
}
