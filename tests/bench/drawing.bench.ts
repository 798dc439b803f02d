import { groundCar, proposeChecks, weighing } from "../../lib/engine/index.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import { drawExercise, previewExercise, readyExercise } from "../../lib/training/index.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { milliseconds, quantile, table } from "./timing.ts";

const EACH = 12;
const WARM_UP = 2;
const CAR = { drive: "front", front: { layout: "strut" }, odometerKm: 140_000, ageYears: 11 };
/** Of the topics an instructor may name, some that few and some that many faults cause. */
const TOPICS = ["noise", "shake", "pull", "brake-hot", "steering-heavy", "tyre-wear", "fluid-leak"];
const LEVELS = ["easy", "middling", "hard"] as const;

/** Drawing an exercise of a wanted topic and difficulty, beside one weighing with its next check: the plain pass that it is made of. */
export function drawingExercises(): string {
  const knowledge = shippedKnowledge();
  const grounded = groundCar(knowledge, CAR);
  const told = [
    { finding: "noise", state: "present", by: "report" },
    { finding: "noise:small-bumps", state: "present", by: "report" },
  ] as const;
  const pass = quantile(
    Array.from({ length: 30 }, () =>
      milliseconds(() => proposeChecks(grounded, told, weighing(grounded, told))),
    ),
    0.5,
  );
  const previews: number[] = [];
  const all: number[] = [];
  const rows = LEVELS.map((level) => {
    const times: number[] = [];
    let fits = 0;
    let worst = { ms: 0, topic: "" };
    for (const [t, complaint] of TOPICS.entries()) {
      for (let k = -WARM_UP; k < EACH; k++) {
        const wish = { id: "drawn", name: "Drawn", release: knowledge.version, car: CAR, complaint, level };
        let drawn: ReturnType<typeof drawExercise> | undefined;
        const ms = milliseconds(() => {
          drawn = drawExercise(knowledge, wish, seededUniform(7_919 * t + k + 100));
        });
        if (k < 0 || drawn === undefined) continue;
        times.push(ms);
        if (drawn.difficulty.level === level && drawn.difficulty.solvable) fits += 1;
        if (ms > worst.ms) worst = { ms, topic: complaint };
        if (k < 2) {
          const ready = readyExercise(knowledge, drawn.exercise);
          previews.push(milliseconds(() => previewExercise(ready)));
        }
      }
    }
    all.push(...times);
    const median = quantile(times, 0.5);
    const p95 = quantile(times, 0.95);
    return [
      level,
      times.length,
      (100 * fits) / times.length,
      median,
      p95,
      median / pass,
      `${worst.ms.toFixed(0)} (${worst.topic})`,
    ];
  });
  const head = ["wanted", "drawn", "as wanted %", "med ms", "p95 ms", "med in passes", "longest ms"];
  return [
    table(head, rows),
    `all: median ${quantile(all, 0.5).toFixed(0)} ms, p95 ${quantile(all, 0.95).toFixed(0)} ms (bar 2000 ms)`,
    `one pass (weigh and choose the next check): ${pass.toFixed(1)} ms; one preview: median ${quantile(previews, 0.5).toFixed(0)} ms`,
  ].join("\n");
}
