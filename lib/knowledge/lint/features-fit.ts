import type { LintFinding, LintRule } from "./rule.ts";

/** A showing lists only features that its complaint has. */
export const featuresFit: LintRule = {
  name: "features-fit",
  about: "A feature that a showing lists itself belongs to its complaint; opposites and mirrors point back.",
  check: ({ knowledge, authored }) => {
    const features = new Map(knowledge.features.map((feature) => [feature.id, feature]));
    const relatives = new Map<string, Set<string>>();
    for (const feature of knowledge.features) {
      for (const key of Object.values(feature.relative ?? {})) {
        if (key === undefined) continue;
        relatives.set(key, new Set([...(relatives.get(key) ?? []), ...feature.complaints]));
      }
    }
    const found: LintFinding[] = [];
    for (const fault of authored.faults) {
      for (const showing of fault.ended === undefined ? fault.shows : []) {
        for (const key of Object.keys(showing.features)) {
          const feature = features.get(key);
          const fits =
            feature?.complaints.includes(showing.complaint) === true ||
            relatives.get(key)?.has(showing.complaint) === true;
          if (fits) continue;
          found.push({
            record: `faults/${fault.id}.json`,
            message: `the feature "${key}" does not belong to ${showing.complaint}`,
            mend: `Remove it, or add ${showing.complaint} to the feature's complaints.`,
          });
        }
      }
    }
    for (const feature of knowledge.features) {
      for (const field of ["opposite", "mirror"] as const) {
        const other = feature[field];
        if (other === undefined || features.get(other)?.[field] === feature.id) continue;
        found.push({
          record: `features/${feature.id}.json`,
          message: `its ${field} is ${other}, whose ${field} is ${features.get(other)?.[field] ?? "not given"}`,
          mend: `Let both name each other as ${field}.`,
        });
      }
    }
    return found;
  },
};
