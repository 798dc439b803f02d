/** Which cases are wanted, in which order; stands in the address, so that it can be sent on and the back button works. */
export interface Wanted {
  readonly state: "open" | "closed" | "all";
  /** Ids of levels, "nothing-told" and "unknown"; empty: all. */
  readonly levels: readonly string[];
  /** "" everybody's, "me", "nobody", "account:ID" or "name:NAME". */
  readonly who: string;
  readonly invented: "shown" | "hidden" | "only";
  readonly sort: "urgent" | "changed" | "oldest";
  readonly text: string;
}

export const NOTHING_PICKED: Wanted = {
  state: "open",
  levels: [],
  who: "",
  invented: "shown",
  sort: "urgent",
  text: "",
};

/** Levels that are none. */
export const NO_LEVELS = ["unknown", "nothing-told"] as const;

const MOST_TEXT = 100;
const WHO = /^(me|nobody|account:[A-Za-z0-9_-]{1,64}|name:.{1,80})$/;
const PICKS: { readonly [K in "state" | "invented" | "sort"]: readonly Wanted[K][] } = {
  state: ["open", "closed", "all"],
  invented: ["shown", "hidden", "only"],
  sort: ["urgent", "changed", "oldest"],
};

/**
 * What an address asks for, and what of it is not known and left out of account.
 *
 * Shape   levels: ids that there are; undefined while they have not arrived, then every id passes.
 */
export function readWanted(
  params: URLSearchParams,
  levels: readonly string[] | undefined,
): { readonly wanted: Wanted; readonly odd: readonly string[] } {
  const odd: string[] = [];
  const pick = <K extends keyof typeof PICKS>(name: K): Wanted[K] => {
    const value = params.get(name);
    const known = PICKS[name].find((one) => one === value);
    if (value !== null && known === undefined) odd.push(`${name}=${value}`);
    return known ?? NOTHING_PICKED[name];
  };
  const who = params.get("who") ?? "";
  if (who !== "" && !WHO.test(who)) odd.push(`who=${who}`);
  const named = (params.get("urgency") ?? "").split(",").filter((id) => id !== "");
  const known = (id: string): boolean =>
    levels === undefined ? /^[a-z0-9-]+$/.test(id) : [...levels, ...NO_LEVELS].includes(id);
  for (const id of named) if (!known(id)) odd.push(`urgency=${id}`);
  const wanted = {
    state: pick("state"),
    levels: [...new Set(named.filter(known))],
    who: WHO.test(who) ? who : "",
    invented: pick("invented"),
    sort: pick("sort"),
    text: (params.get("text") ?? "").slice(0, MOST_TEXT),
  };
  for (const name of new Set(params.keys()))
    if (!NAMES.includes(name)) odd.push(`${name}=${params.get(name) ?? ""}`);
  return { wanted, odd };
}

const NAMES = ["state", "urgency", "who", "invented", "sort", "text"];

/** The address of the list, with what is not as usual. */
export function addressOf(wanted: Wanted): string {
  const params = new URLSearchParams();
  for (const name of ["state", "who", "invented", "sort", "text"] as const)
    if (wanted[name] !== NOTHING_PICKED[name]) params.set(name, wanted[name]);
  if (wanted.levels.length > 0) params.set("urgency", wanted.levels.join(","));
  const query = params.toString();
  return query === "" ? "/" : `/?${query}`;
}

/** Somebody as cases name them: by account, or by name where there is none. */
export interface Myself {
  readonly account: string | undefined;
  readonly name: string;
}

/** What the server is asked for. */
export function queryOf(wanted: Wanted, me: Myself): string {
  const params = new URLSearchParams({ order: wanted.sort });
  if (wanted.state !== "all") params.set("closed", wanted.state === "closed" ? "1" : "0");
  if (wanted.levels.length > 0) params.set("urgency", wanted.levels.join(","));
  if (wanted.who === "me" && me.account === undefined) params.set("who", `name:${me.name}`);
  else if (wanted.who !== "") params.set("who", wanted.who);
  if (wanted.invented !== "shown") params.set("invented", wanted.invented === "only" ? "1" : "0");
  if (wanted.text.trim() !== "") params.set("text", wanted.text.trim());
  return params.toString();
}
