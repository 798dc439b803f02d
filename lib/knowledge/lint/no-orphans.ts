import type { LintFinding, LintRule } from "./rule.ts";
import { referencesOf } from "../references.ts";

/** Nothing lies about unused. */
export const noOrphans: LintRule = {
  name: "no-orphans",
  about: "Every part, complaint, feature, profile, context, caution and source is used by some record.",
  check: ({ knowledge, authored }) => {
    const used = new Set(referencesOf(authored).map(({ kind, id }) => `${kind}:${id}`));
    const featureKeys = new Set(
      knowledge.faults.flatMap((fault) => fault.shows.flatMap((showing) => Object.keys(showing.features))),
    );
    const found: LintFinding[] = [];
    const orphan = (folder: string, id: string, mend: string) => {
      found.push({ record: `${folder}/${id}.json`, message: "nothing uses it", mend });
    };
    for (const { id } of knowledge.parts) {
      if (!knowledge.faults.some((fault) => fault.part === id))
        orphan("parts", id, "Write a fault of it, or remove it.");
    }
    for (const { id } of knowledge.complaints) {
      const shown = knowledge.faults.some((fault) => fault.shows.some((showing) => showing.complaint === id));
      if (!shown) orphan("complaints", id, "Let a fault show it, or remove it.");
    }
    for (const feature of knowledge.features) {
      const keys = [feature.id, ...Object.values(feature.relative ?? {})];
      const sided = feature.defaults !== undefined;
      if (!sided && !keys.some((key) => key !== undefined && featureKeys.has(key))) {
        orphan("features", feature.id, "List it in a profile or a showing, or remove it.");
      }
    }
    for (const { id } of authored.profiles) {
      if (!used.has(`profile:${id}`)) orphan("profiles", id, "Use it in a showing, or remove it.");
    }
    for (const { id } of knowledge.contexts) {
      if (!used.has(`context:${id}`)) orphan("contexts", id, "Give a fault a factor for it, or remove it.");
    }
    for (const { id } of knowledge.cautions) {
      if (!used.has(`caution:${id}`)) orphan("cautions", id, "Name it in a check or a remedy, or remove it.");
    }
    for (const { id } of knowledge.sources) {
      if (!used.has(`source:${id}`)) orphan("sources", id, "Name it as a basis, or remove it.");
    }
    return found;
  },
};
