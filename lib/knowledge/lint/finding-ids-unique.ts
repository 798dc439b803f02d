import type { LintFinding, LintRule } from "./rule.ts";

/** A finding's bare id means one thing only. */
export const findingIdsUnique: LintRule = {
  name: "finding-ids-unique",
  about: "No id is shared between complaints, features, observations and contexts.",
  check: ({ knowledge }) => {
    const owner = new Map<string, string>();
    const found: LintFinding[] = [];
    const claim = (id: string, file: string) => {
      const other = owner.get(id);
      if (other === undefined) owner.set(id, file);
      else if (other !== file) {
        found.push({
          record: file,
          message: `the id "${id}" is also used by ${other}`,
          mend: "Rename one; an answer names a finding by its bare id.",
        });
      }
    };
    for (const { id } of knowledge.complaints) claim(id, `complaints/${id}.json`);
    for (const { id } of knowledge.features) claim(id, `features/${id}.json`);
    for (const { id } of knowledge.observations) claim(id, `observations/${id}.json`);
    for (const { id } of knowledge.contexts) claim(id, `contexts/${id}.json`);
    return found;
  },
};
