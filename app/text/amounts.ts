/** Units that the screens show in; inside everything is km and mm. */
export interface Units {
  readonly distance: "km" | "miles";
  readonly length: "mm" | "inch";
}

const KM_PER_MILE = 1.609344;
const MM_PER_INCH = 25.4;

/** Km to the shown unit, whole. */
export function shownDistance(km: number, units: Units): number {
  return Math.round(units.distance === "miles" ? km / KM_PER_MILE : km);
}

/** The shown unit to km. */
export function distanceInKm(shown: number, units: Units): number {
  return Math.round(units.distance === "miles" ? shown * KM_PER_MILE : shown);
}

/** The shown unit to km, unrounded; speeds too. */
export function exactDistanceInKm(shown: number, units: Units): number {
  return units.distance === "miles" ? shown * KM_PER_MILE : shown;
}

/** Unit of speeds. */
export function speedUnit(units: Units): string {
  return units.distance === "miles" ? "mph" : "km/h";
}

/** An entered length to mm. */
export function lengthInMm(shown: number, units: Units): number {
  return units.length === "inch" ? shown * MM_PER_INCH : shown;
}

/** A limit in mm as the user reads lengths. */
export function shownLength(mm: number, units: Units): string {
  return units.length === "inch" ? `${(mm / MM_PER_INCH).toFixed(3)} in` : `${mm} mm`;
}

/** Minutes as a person says them. */
export function minutesWords(minutes: number): string {
  const rounded = minutes < 10 ? Math.round(minutes * 2) / 2 : Math.round(minutes);
  return `${rounded} min`;
}

/** Minutes, as hours and minutes from two hours on. */
export function hoursWords(minutes: number): string {
  if (minutes < 120) return minutesWords(minutes);
  const whole = Math.round(minutes);
  return `${Math.floor(whole / 60)} h ${String(whole % 60).padStart(2, "0")} min`;
}

/** A typed number with either decimal sign; undefined when it is none. */
export function typedNumber(text: string): number | undefined {
  const trimmed = text.trim().replace(/\s/g, "").replace(",", ".");
  if (!/^-?\d+(\.\d+)?$/.test(trimmed)) return undefined;
  return Number(trimmed);
}
