import type { Grounded, ProposedCheck } from "../../../lib/engine/index.ts";
import { stepTakes } from "../../../lib/training/ramp-minutes.ts";
import { nameOfCheck } from "../../text/names.ts";

/** A check or question as its card shows it; a proposed one is one. */
export type StepOnCard = Pick<
  ProposedCheck,
  "id" | "kind" | "check" | "place" | "name" | "minutes" | "setUpMinutes" | "setUp"
>;

/** A check or question that was picked by its id; undefined when this car does not have it. */
export function stepOnCard(grounded: Grounded, id: string, from: string | undefined): StepOnCard | undefined {
  const { knowledge } = grounded;
  const setUp = from ?? knowledge.setUps.start;
  try {
    const takes = stepTakes(grounded, id, setUp);
    const minutes = takes.check?.minutes ?? takes.minutes;
    return {
      id,
      kind: takes.check === undefined ? "question" : "check",
      check: takes.check,
      place: takes.place,
      name: takes.check?.name ?? questionOf(grounded, id.slice(4)),
      minutes,
      setUpMinutes: takes.minutes - minutes,
      setUp: takes.setUp,
    };
  } catch {
    return undefined;
  }
}

function questionOf({ knowledge }: Grounded, finding: string): string {
  const feature = finding.split(":")[1];
  const records = [...knowledge.complaints, ...knowledge.contexts];
  return (
    (feature !== undefined
      ? knowledge.features.find((f) => f.id === feature)?.question
      : records.find((r) => r.id === finding)?.question) ?? nameOfCheck(knowledge, `ask:${finding}`)
  );
}
