import type { CompiledCheck, Knowledge, SetUpsFile } from "../schema/compiled.ts";

/** Checks that are made in one state of the car. */
export interface ChecksGroup {
  readonly setUp: SetUpsFile["setUps"][number];
  readonly checks: readonly CompiledCheck[];
}

/** All checks by the state that the car must be in, by name. */
export function checksIndex(knowledge: Knowledge): ChecksGroup[] {
  return knowledge.setUps.setUps.flatMap((setUp) => {
    const checks = knowledge.checks
      .filter((check) => check.setUp === setUp.id && check.ended === undefined)
      .sort((a, b) => (a.name.toLowerCase() < b.name.toLowerCase() ? -1 : 1));
    return checks.length === 0 ? [] : [{ setUp, checks }];
  });
}
