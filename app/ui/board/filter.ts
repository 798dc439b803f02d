/** Which attempts are looked at, as the address of the page has it; empty: all. */
export interface Filter {
  readonly exercise: string;
  /** Id of an account, or a name as it was typed. */
  readonly trainee: string;
  readonly course: string;
  readonly ended: "" | "yes" | "no";
  /** Days of this place, as 2026-03-01; both are meant too. */
  readonly from: string;
  readonly until: string;
}

const DAY = /^\d{4}-\d{2}-\d{2}$/;

/** The filter of an address; what is no filter counts as left out. */
export function filterOf(params: Pick<URLSearchParams, "get">): Filter {
  const text = (name: string): string => (params.get(name) ?? "").slice(0, 120);
  const day = (name: string): string => (startOf(text(name)) === undefined ? "" : text(name));
  const ended = text("ended");
  return {
    exercise: /^[\w-]{1,64}$/.test(text("exercise")) ? text("exercise") : "",
    trainee: text("trainee"),
    course: text("course"),
    ended: ended === "yes" || ended === "no" ? ended : "",
    from: day("from"),
    until: day("until"),
  };
}

/** The address's part behind the question mark, empty when all are meant. */
export function addressOf(filter: Filter): string {
  return queryOf(Object.entries(filter));
}

/** What the server is asked: days become the moments at which they begin and end here. */
export function askedOf({ from, until, ...rest }: Filter): Record<string, string> {
  const asked = { ...rest, from: startOf(from) ?? "", until: startOf(until, 1) ?? "" };
  return Object.fromEntries(Object.entries(asked).filter(([, value]) => value !== ""));
}

/** The same as a query, empty or with its question mark. */
export function askedQuery(filter: Filter, more: Readonly<Record<string, string>> = {}): string {
  return queryOf(Object.entries({ ...askedOf(filter), ...more }));
}

function queryOf(pairs: readonly (readonly [string, string])[]): string {
  const params = new URLSearchParams(pairs.filter(([, value]) => value !== "").map(([k, v]) => [k, v]));
  return params.size === 0 ? "" : `?${params}`;
}

/** Beginning of a day of this place, or of one so many days later. */
function startOf(day: string, later = 0): string | undefined {
  if (!DAY.test(day)) return undefined;
  const date = new Date(`${day}T00:00:00`);
  date.setDate(date.getDate() + later);
  return Number.isNaN(date.getTime()) ? undefined : date.toISOString();
}
