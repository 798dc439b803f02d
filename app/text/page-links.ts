/** Address of a part's page, at one of its faults when that is given. */
export function partHref(part: string, fault?: string): string {
  return `/parts/${part}${fault === undefined ? "" : `#${fault}`}`;
}

export function checkHref(check: string): string {
  return `/checks/${check}`;
}

/** Address of the page of a complaint, feature, observation or context. */
export function findingHref(finding: string): string {
  return `/findings/${finding}`;
}
