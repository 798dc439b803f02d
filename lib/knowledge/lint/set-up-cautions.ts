import type { LintFinding, LintRule } from "./rule.ts";

/** What a set-up needs -> what a check in it does. */
const DEEDS = { nothing: undefined, road: "drives", stands: "lifts", lift: "lifts" } as const;

/** A check in a set-up that lifts or drives the car says so and has the caution. */
export const setUpCautions: LintRule = {
  name: "set-up-cautions",
  about:
    'A check in a set-up that needs a lift or stands "lifts", one on the road "drives", each with a caution that covers it.',
  check: ({ knowledge }) => {
    const needs = new Map(knowledge.setUps.setUps.map((setUp) => [setUp.id, setUp.needs]));
    const covers = new Map(knowledge.cautions.map((caution) => [caution.id, caution.covers]));
    const found: LintFinding[] = [];
    for (const check of knowledge.checks) {
      const deed = DEEDS[needs.get(check.setUp) ?? "nothing"];
      if (deed === undefined) continue;
      const said = check.does.includes(deed);
      const covered = check.cautions.some((id) => covers.get(id)?.includes(deed));
      if (said && covered) continue;
      found.push({
        record: `checks/${check.id}.json`,
        message: `its set-up "${check.setUp}" ${deed} the car, but ${said ? "no caution covers that" : `"does" has no "${deed}"`}`,
        mend: `Put "${deed}" into "does" and name a caution that covers it.`,
      });
    }
    return found;
  },
};
