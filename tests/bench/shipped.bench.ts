import { type Answer, type Grounded, groundCar, proposeChecks, weighing } from "../../lib/engine/index.ts";
import { readText } from "../../lib/words/index.ts";
import { seededUniform } from "../support/random-models.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { TOLD } from "../support/told-sentences.ts";
import { milliseconds, quantile, table } from "./timing.ts";

const CASES = 60;
/** Cases that only warm the code up. */
const WARM_UP = 10;

/** Weighing and the next check after one more answer, on the shipped knowledge, by how much was answered before. */
export function shippedKnowledgeStep(): string {
  const knowledge = shippedKnowledge();
  const grounded = groundCar(knowledge, { drive: "front", front: { layout: "strut" }, odometerKm: 140_000 });
  const links = [...grounded.nodes.values()].reduce(
    (sum, n) => sum + n.parents.length * n.strengths.length,
    0,
  );
  const rows = [0, 2, 5, 10].map((observations) => {
    const weigh: number[] = [];
    const next: number[] = [];
    const whole: number[] = [];
    let present = 0;
    for (let seed = -WARM_UP; seed < CASES; seed++) {
      const answers = someAnswers(grounded, seed + 1_000, observations);
      let result = weighing(grounded, []);
      const weighMs = milliseconds(() => {
        result = weighing(grounded, answers);
      });
      const nextMs = milliseconds(() => proposeChecks(grounded, answers, result));
      if (seed < 0) continue;
      present += result.assembled.evidence.positives.length;
      weigh.push(weighMs);
      next.push(nextMs);
      whole.push(weighMs + nextMs);
    }
    const floor = quantile(
      Array.from({ length: 200 }, () => milliseconds(() => onePass(grounded))),
      0.5,
    );
    return [
      observations,
      present / CASES,
      quantile(weigh, 0.5),
      quantile(next, 0.5),
      quantile(whole, 0.5),
      quantile(whole, 0.95),
      quantile(whole, 0.5) / floor,
    ];
  });
  const ground = Array.from({ length: 20 }, () =>
    milliseconds(() => groundCar(knowledge, { drive: "front" })),
  );
  const head = [
    "observations",
    "present",
    "weigh med ms",
    "next med ms",
    "whole med ms",
    "p95",
    "ratio to one pass",
  ];
  return [
    `${grounded.suspects.length} suspects, ${grounded.nodes.size} findings at places, ${links} links`,
    `laying the knowledge over a car: median ${quantile(ground, 0.5).toPrecision(3)} ms, p95 ${quantile(ground, 0.95).toPrecision(3)} ms`,
    table(head, rows),
  ].join("\n");
}

/** Reading free text: the labelled sentences one by one, and ten thousand characters at once. */
export function readingText(): string {
  const knowledge = shippedKnowledge();
  const first = milliseconds(() => readText(knowledge, "a clunk"));
  const each = TOLD.map(([text]) => milliseconds(() => readText(knowledge, text)));
  const long = Array.from({ length: 10 }, () => TOLD.map(([text]) => text).join(" "))
    .join(" ")
    .slice(0, 10_000);
  const whole = Array.from({ length: 15 }, () => milliseconds(() => readText(knowledge, long)));
  return table(
    ["first call ms", "sentence med ms", "p95", "10,000 characters med ms", "p95", "ratio long to sentence"],
    [
      [
        first,
        quantile(each, 0.5),
        quantile(each, 0.95),
        quantile(whole, 0.5),
        quantile(whole, 0.95),
        quantile(whole, 0.5) / quantile(each, 0.5),
      ],
    ],
  );
}

/** A told noise with two moments, sometimes a shake, and observations around one corner as a technician meets them. */
function someAnswers(grounded: Grounded, seed: number, observations: number): Answer[] {
  const uniform = seededUniform(seed);
  const any = <T>(list: readonly T[]): T => list[Math.floor(uniform() * list.length)] as T;
  const { features } = grounded.knowledge;
  const told = new Map<string, Answer>();
  const say = (complaint: string, count: number): void => {
    told.set(complaint, { finding: complaint, state: "present", by: "report" });
    const its = features.filter((f) => f.complaints.includes(complaint));
    for (let k = 0; k < count; k++) {
      const finding = `${complaint}:${any(its).id}`;
      told.set(finding, { finding, state: uniform() < 0.8 ? "present" : "absent", by: "report" });
    }
  };
  const [noise, shake] = grounded.knowledge.complaints
    .toSorted((a, b) => (grounded.links.get(b.id)?.length ?? 0) - (grounded.links.get(a.id)?.length ?? 0))
    .map((c) => c.id);
  say(noise ?? "", 3);
  if (uniform() < 0.4) say(shake ?? "", 2);
  const nodes = [...grounded.nodes.keys()];
  for (let k = 0; k < observations; k++) {
    const finding = any(nodes);
    told.set(finding, { finding, state: uniform() < 0.4 ? "present" : "absent", by: "check" });
  }
  return [...told.values()];
}

/** The floor: one plain pass over all links of the model. */
function onePass(grounded: Grounded): number {
  let sum = 0;
  for (const node of grounded.nodes.values()) {
    for (const row of node.strengths) {
      for (let k = 0; k < row.length; k++) sum += (row[k] ?? 0) * (grounded.prior[node.parents[k] ?? 0] ?? 0);
    }
  }
  return sum;
}
