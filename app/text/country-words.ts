const REGIONS = new Intl.DisplayNames(["en-GB"], { type: "region" });

/** A country, or a state of one, by its code: "United States, MO" for US-MO. */
export function countryWords(code: string): string {
  const [country = "", state] = code.split("-");
  const name = REGIONS.of(country) ?? country;
  return state === undefined ? name : `${name}, ${state}`;
}
