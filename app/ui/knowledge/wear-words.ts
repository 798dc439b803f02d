import { shownDistance } from "../../text/amounts.ts";

const NUMBER = new Intl.NumberFormat("en-GB", { maximumFractionDigits: 0 });

/** A distance or an age with its thousands apart. */
export function ageWords(value: number): string {
  return NUMBER.format(value);
}

/** A distance in miles, to the nearest hundred. */
export function milesWords(km: number): string {
  return NUMBER.format(Math.round(shownDistance(km, { distance: "miles", length: "mm" }) / 100) * 100);
}

/** A life rounded to two figures, with its unit. */
export function lifeWords(value: number, unit: "km" | "years"): string {
  const rounded = Number(value.toPrecision(2));
  if (unit === "years") return `${rounded} years`;
  return `${NUMBER.format(rounded)} km (${NUMBER.format(Number((rounded / 1.609344).toPrecision(2)))} miles)`;
}

/** What a factor on the odds does. */
export function factorWords(factor: number): string {
  if (factor === 1) return "no difference";
  return factor > 1 ? `likelier: odds times ${factor}` : `less likely: odds times ${factor}`;
}
