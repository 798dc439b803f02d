"use client";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { useSettings } from "../../store/use-settings.ts";
import { carLine } from "../case/car-fields.ts";
import type { OpenAttempt } from "./use-attempt.ts";

/** Which car it is, in one line. */
export function CarLine({
  knowledge,
  exercise,
}: {
  readonly knowledge: Knowledge;
  readonly exercise: OpenAttempt["exercise"];
}) {
  const [settings] = useSettings();
  return (
    <p>
      <strong>{exercise.vehicle}</strong>{" "}
      <span className="soft">{carLine(knowledge.car.attributes, exercise.car, settings)}</span>
    </p>
  );
}
