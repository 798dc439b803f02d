/** What to do when there is no browser. */
export const BROWSER_ADVICE: string;

/** The browser to drive: E2E_CHROMIUM, the PATH, the usual places, Playwright's own; undefined when there is none. */
export function findBrowser(): Promise<string | undefined>;
