const CLOCK = new Intl.DateTimeFormat("en-GB", { hour: "2-digit", minute: "2-digit" });
const DAY = new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "short", year: "numeric" });

/** Time of an entry as local day and clock. */
export function momentWords(at: string): string {
  const date = new Date(at);
  return `${DAY.format(date)}, ${CLOCK.format(date)}`;
}

/** Local clock only. */
export function clockWords(at: string): string {
  return CLOCK.format(new Date(at));
}

/** Local day only. */
export function dayWords(at: string): string {
  return DAY.format(new Date(at));
}
