import { hashedUniform } from "../../maths/hashed-uniform.ts";
import type { Answer } from "../answers.ts";
import { showingStrength } from "../complaint-bit.ts";
import { parseFinding } from "../finding-id.ts";
import type { Settled } from "../propose.ts";
import type { SimulatedCar } from "./simulated-car.ts";
import { tellsFeature } from "./told-features.ts";

/**
 * The grade that a check finds of an observation at a place: -1 for none.
 *
 * Noisy-max: each present suspect gives a grade by its strengths, causes outside the knowledge by the leak; the highest
 * counts. Fixed by the car's seed and the finding: the same when repeated, whatever was checked before.
 */
export function gradeFound(car: SimulatedCar, node: string): number {
  const found = car.world.nodes.get(node);
  if (found === undefined) return -1;
  let grade = highest(hashedUniform(car.seed, node), (level) => found.leak[level] ?? 0, found.leak.length);
  found.parents.forEach((suspect, k) => {
    if (car.present[suspect] !== 1) return;
    const drawn = hashedUniform(car.seed, `${node} ${car.world.suspects[suspect]?.id ?? ""}`);
    grade = Math.max(
      grade,
      highest(drawn, (level) => found.strengths[level]?.[k] ?? 0, found.leak.length),
    );
  });
  return grade;
}

/** Answers of a check that settles these findings. */
export function checkResult(car: SimulatedCar, settles: readonly Settled[]): Answer[] {
  return settles.map(({ finding, levels }): Answer => {
    const set = car.set?.get(finding);
    if (set !== undefined) return { finding, ...set, by: "check" };
    const grade = gradeFound(car, finding);
    if (grade < 0) return { finding, state: "absent", by: "check" };
    const level = levels.length > 1 ? { level: levels[grade] } : {};
    return { finding, state: "present", by: "check", ...level };
  });
}

/** The owner's answer to a question: a feature of the complaint, a further complaint, or something that happened lately. */
export function questionResult(car: SimulatedCar, finding: string): Answer {
  const { world, seed } = car;
  const asked = parseFinding(world.knowledge, finding);
  const set = car.set?.get(finding);
  if (set !== undefined) return { finding, ...set, by: "report" };
  const said = (present: boolean): Answer => ({
    finding,
    state: present ? "present" : "absent",
    by: "report",
  });
  switch (asked.kind) {
    case "feature":
      return said(tellsFeature(world, seed, car.complaint.id, asked.feature, car.heard));
    case "context":
      return said(world.contexts.includes(finding));
    case "complaint":
      return said(tellsComplaint(car, finding));
    case "observation":
      return { finding, state: "unknown", by: "report" };
  }
}

/** Is a further complaint told? What is there is passed over as often as reports are unreliable. */
function tellsComplaint(car: SimulatedCar, complaint: string): boolean {
  const { world, seed, present } = car;
  if (complaint === car.complaint.id) return true;
  const { reliability } = world.knowledge.reports;
  const leak = world.knowledge.complaints.find((c) => c.id === complaint)?.leak ?? 0;
  if (hashedUniform(seed, complaint) < reliability * leak) return true;
  return (world.links.get(complaint) ?? []).some(
    ({ suspect, showings }) =>
      present[suspect] === 1 &&
      hashedUniform(seed, `${complaint} ${world.suspects[suspect]?.id ?? ""}`) <
        reliability * showingStrength(showings),
  );
}

/** The highest grade whose chance reaches the number drawn; grades are nested, so their chances fall. */
function highest(drawn: number, chance: (level: number) => number, levels: number): number {
  let grade = -1;
  for (let level = 0; level < levels && drawn < chance(level); level++) grade = level;
  return grade;
}
