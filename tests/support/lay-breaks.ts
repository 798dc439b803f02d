import { patch, type TinyChange } from "./tiny-knowledge.ts";

const LAY_TRY = { question: "Does the bar move?", steps: ["Pull at it."], settles: ["link-play"] };

/** Makes the check of the bar's link one that an owner may try, but for what a test changes. */
export function layTry(changes: Record<string, unknown>): TinyChange {
  return (records) => {
    patch(records, "observations/link-play.json", { lay: { choice: "it moves" } });
    patch(records, "checks/feel-link.json", {
      who: "owner",
      setUp: "standing",
      does: [],
      lay: LAY_TRY,
      ...changes,
    });
  };
}

/** What breaks the rules of lay words in the tiny knowledge, and the record that the rule then names. */
export const LAY_BREAKS: Record<string, [TinyChange, string][]> = {
  "lay-words": [
    [(records) => patch(records, "complaints/noise.json", { lay: undefined }), "complaints/noise.json"],
    [
      (records) => patch(records, "features/small-bumps.json", { lay: { question: "Is it there" } }),
      "features/small-bumps.json",
    ],
    [
      (records) => patch(records, "features/small-bumps.json", { lay: { question: "Is it a bush?" } }),
      "features/small-bumps.json",
    ],
    [
      (records) => patch(records, "features/from-front.json", { lay: { question: "Is it at the front?" } }),
      "features/from-front.json",
    ],
    [
      (records) =>
        patch(records, "contexts/kerb-strike.json", {
          lay: { question: `Did a wheel ${"hit and ".repeat(12)}hit the kerb?` },
        }),
      "contexts/kerb-strike.json",
    ],
    [
      (records) =>
        patch(records, "lay.json", {
          first: { question: "Unsatisfactory characteristics notwithstanding, considerable deterioration?" },
          limits: { questionLetters: 90, ease: 90, jargon: [], banned: [] },
        }),
      "lay.json",
    ],
  ],
  "lay-tries": [
    [layTry({ who: "technician" }), "checks/feel-link.json"],
    [layTry({ helper: true }), "checks/feel-link.json"],
    [layTry({ setUp: "hanging" }), "checks/feel-link.json"],
    [layTry({ setUp: "road" }), "checks/feel-link.json"],
    [layTry({ does: ["loads"], cautions: ["pry"] }), "checks/feel-link.json"],
    [layTry({ lay: { ...LAY_TRY, settles: ["joint-play"] } }), "checks/feel-link.json"],
    [layTry({ lay: { ...LAY_TRY, question: "Does the bush move?" } }), "checks/feel-link.json"],
    [layTry({ lay: { ...LAY_TRY, steps: ["Use the jack. Do not hurry."] } }), "checks/feel-link.json"],
    [layTry({ lay: { ...LAY_TRY, question: "Does the {place} bar move?" } }), "checks/feel-link.json"],
    [
      (records) => {
        layTry({})(records);
        patch(records, "observations/link-play.json", { lay: undefined });
      },
      "checks/feel-link.json",
    ],
  ],
};
