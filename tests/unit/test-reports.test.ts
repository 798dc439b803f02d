import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { nodeProblem } from "../../lib/scripts/ensure-installed.mjs";
import { playwrightCounts, vitestCounts } from "../support/test-reports.mjs";

const folder = mkdtempSync(join(tmpdir(), "cornerwise-reports-"));
afterAll(() => rmSync(folder, { recursive: true }));

function file(report: unknown): string {
  const path = join(folder, "report.json");
  writeFileSync(path, JSON.stringify(report));
  return path;
}

const unit = (passed: number, failed: number, testResults: unknown[] = []) =>
  vitestCounts(file({ numPassedTests: passed, numFailedTests: failed, testResults }));
const browser = (stats: object, errors: unknown[] = []) =>
  playwrightCounts(file({ stats: { expected: 0, unexpected: 0, flaky: 0, skipped: 0, ...stats }, errors }));

// The reports' fields are those that Vitest 4 and Playwright 1.65 write.
describe("counting from the reports", () => {
  it("counts what passed and failed", () => {
    expect(unit(7, 0)).toMatchObject({ ok: true, passed: 7, failed: 0 });
    expect(unit(7, 2)).toMatchObject({ ok: false, passed: 7, failed: 2 });
    expect(browser({ expected: 5 })).toMatchObject({ ok: true, passed: 5, failed: 0 });
    expect(browser({ expected: 5, unexpected: 1, flaky: 1 })).toMatchObject({
      ok: false,
      passed: 5,
      failed: 2,
    });
  });

  it("calls no test at all a failure", () => {
    expect(unit(0, 0).ok).toBe(false);
    expect(browser({}).ok).toBe(false);
    expect(browser({ skipped: 4 }).ok).toBe(false);
  });

  it("counts a file that could not be loaded, and an error outside any test", () => {
    expect(unit(7, 0, [{ status: "failed", assertionResults: [] }])).toMatchObject({ ok: false, failed: 1 });
    expect(browser({ expected: 5 }, [{ message: "no server" }])).toMatchObject({ ok: false, failed: 1 });
  });

  it("refuses a report that is not there", () => {
    expect(() => vitestCounts(join(folder, "none.json"))).toThrow(/did not run to their end/);
  });
});

describe("the check of Node's version", () => {
  it.each(["20.19.0", "20.20.2", "22.0.0", "24.21.0"])("takes %s", (version) => {
    expect(nodeProblem(version)).toBeUndefined();
  });
  it.each(["18.20.0", "20.18.3", "4.0.0"])("refuses %s and says what to do", (version) => {
    expect(nodeProblem(version)).toMatch(/needs Node 20\.19 or newer.*Install/s);
  });
});
