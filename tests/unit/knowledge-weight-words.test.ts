import { expect, test } from "vitest";
import { changeWords, weightWords } from "../../lib/knowledge/weight-words.ts";
import { weightsOf } from "../../lib/knowledge/weights.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { tinyKnowledge } from "../support/tiny-knowledge.ts";

test("each kind of weight is said in the names of its records", () => {
  const { knowledge } = tinyKnowledge();
  const say = (name: string) => {
    const { subject, says } = weightWords(knowledge, name);
    return `${subject} - ${says}`;
  };
  expect(
    [
      "faults/rack-worn prior",
      "faults/ball-joint-worn share",
      "faults/bar-link-worn contexts.kerb-strike",
      "faults/rack-worn shows.noise",
      "faults/rack-worn shows.noise#2.small-bumps",
      "faults/rack-worn links.rack-play.0",
      "faults/ball-joint-worn links.joint-play.1",
      "complaints/noise leak",
      "features/small-bumps background",
      "features/small-bumps unlisted",
      "observations/joint-play leak.clear",
      "observations/rack-play leak.present",
      "contexts/kerb-strike share",
      "faults/no-longer-there prior",
    ].map(say),
  ).toEqual([
    "steering rack: worn - chance on a car of which nothing is known",
    "ball joint: worn - share of cars that have it",
    "bar link: worn - factor on its odds after: hit a kerb",
    "steering rack: worn - how often it shows as a noise",
    "steering rack: worn - when it shows as a noise, how often: over small bumps",
    "steering rack: worn - how often it gives play in the rack",
    "ball joint: worn - how often it gives play in the ball joint (clear)",
    "a noise - chance of it from causes that the knowledge does not hold",
    "over small bumps - chance of it when the cause lies outside the knowledge",
    "over small bumps - chance of it for a fault that does not name it",
    "play in the ball joint - chance of it without any fault behind it (clear)",
    "play in the rack - chance of it without any fault behind it",
    "hit a kerb - share of cars that it is true of",
    "no longer there - chance on a car of which nothing is known",
  ]);
});

test("no weight of the shipped knowledge is left without words of its own", () => {
  const knowledge = shippedKnowledge();
  const names = [...weightsOf(knowledge).keys()];
  const ids = new Set(knowledge.faults.map(({ id }) => id.replaceAll("-", " ")));
  const bare = names.filter((name) => {
    const { subject, says } = weightWords(knowledge, name);
    return (
      (name.startsWith("faults/") && ids.has(subject)) || says === "" || /undefined|[a-z]\.[a-z]/.test(says)
    );
  });
  expect(names.length).toBeGreaterThan(1000);
  expect(bare).toEqual([]);
});

test("a change is told in figures, as a factor on the odds and in log-odds", () => {
  // By hand: odds 0.02/0.98 to 0.04/0.96 is a factor 2.0417, its logarithm 0.7138.
  const logOddsDelta = Math.log(0.04 / 0.96 / (0.02 / 0.98));
  expect(changeWords({ weight: "w", from: 0.02, to: 0.04, logOddsDelta })).toBe(
    "from 0.02 to 0.04, odds times 2.0 (log-odds +0.71)",
  );
  expect(changeWords({ weight: "w", from: 0.04, to: 0.02, logOddsDelta: -logOddsDelta })).toBe(
    "from 0.04 to 0.02, odds divided by 2.0 (log-odds \u22120.71)",
  );
  expect(changeWords({ weight: "w", from: 0.0123456, to: 0.0125, logOddsDelta: 0.0124 })).toBe(
    "from 0.0123 to 0.0125, odds times 1.01 (log-odds +0.01)",
  );
});
