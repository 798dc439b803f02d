import type { LintFinding, LintRule } from "./rule.ts";

interface Named {
  readonly id: string;
  readonly name: string;
}

/** One name, one thing. */
export const namesUnique: LintRule = {
  name: "names-unique",
  about: "No two records of a kind share a name (faults: within a part), and no two parts share any name.",
  check: ({ knowledge, authored }) => {
    const found: LintFinding[] = [];
    const sameName = (folder: string, records: readonly Named[], mend: string) => {
      const owner = new Map<string, string>();
      for (const { id, name } of records) {
        const key = plain(name);
        const other = owner.get(key);
        if (other !== undefined) {
          found.push({
            record: `${folder}/${id}.json`,
            message: `the name "${name}" is also that of ${folder}/${other}.json`,
            mend,
          });
        } else owner.set(key, id);
      }
    };
    const rename = "Word one of them so that it says what sets it apart.";
    sameName("parts", knowledge.parts, rename);
    sameName("complaints", knowledge.complaints, rename);
    sameName("features", knowledge.features, rename);
    sameName("observations", knowledge.observations, rename);
    sameName("checks", knowledge.checks, rename);
    sameName("contexts", knowledge.contexts, rename);
    sameName("profiles", authored.profiles, rename);
    sameName("layouts", knowledge.layouts, rename);
    sameName(
      "sources",
      knowledge.sources.map(({ id, title }) => ({ id, name: title })),
      rename,
    );
    for (const part of knowledge.parts) {
      sameName(
        "faults",
        knowledge.faults.filter((fault) => fault.part === part.id),
        rename,
      );
    }
    const owner = new Map<string, { id: string; name: string }>();
    for (const part of knowledge.parts) {
      for (const name of new Set([part.name, ...part.otherNames].map(plain))) {
        const other = owner.get(name);
        if (other === undefined) owner.set(name, part);
        else if (plain(other.name) !== plain(part.name)) {
          found.push({
            record: `parts/${part.id}.json`,
            message: `the name "${name}" is also one of parts/${other.id}.json`,
            mend: "Leave it to the part that is meant by it, or make both names fuller.",
          });
        }
      }
    }
    return found;
  },
};

/** A name without case, hyphens and doubled spaces. */
function plain(name: string): string {
  return name
    .toLowerCase()
    .replace(/[\s-]+/g, " ")
    .trim();
}
