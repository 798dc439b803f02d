interface Counts {
  readonly ok: boolean;
  readonly passed: number;
  readonly failed: number;
  readonly note?: string;
}

/** Counts of a Vitest JSON report; no test at all is a failure. */
export function vitestCounts(path: string): Counts;

/** Counts of a Playwright JSON report; no test at all is a failure, and so is a flaky one. */
export function playwrightCounts(path: string): Counts;
