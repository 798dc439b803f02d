"use client";
import { useState } from "react";
import type { Difficulty } from "../../../lib/training/index.ts";
import { capital } from "../../text/names.ts";
import { Choice } from "../choice.tsx";
import { Fold } from "../fold.tsx";
import { newSeed } from "./new-seed.ts";
import type { PartProps } from "./part-props.ts";
import { settingOf } from "./setting.ts";
import { useExerciseAnswer } from "./use-exercise-answer.ts";
import type { Units } from "../../text/amounts.ts";

const LEVELS = [
  { value: "easy", name: "easy" },
  { value: "middling", name: "middling" },
  { value: "hard", name: "hard" },
] as const;

/** Draws an exercise by topic and difficulty: what is hidden and what is said; car and terms stay as they are set. */
export function DrawPart({
  release,
  setting,
  car,
  units,
  onSetting,
  onDrawn,
}: PartProps & { readonly units: Units; readonly onDrawn: () => void }) {
  const { knowledge } = release;
  const [topic, setTopic] = useState("");
  const [level, setLevel] = useState<Difficulty["level"]>("easy");
  const [drawn, setDrawn] = useState<Difficulty>();
  const { busy, failed, ask } = useExerciseAnswer(release, "draw");
  const draw = async () => {
    const { lift, helper, missingTools, unreliable } = setting;
    const share = Number(unreliable.replace(",", "."));
    const wish = {
      id: setting.id,
      name: setting.name.trim() || "Drawn (invented)",
      release: setting.release,
      car,
      ...(topic !== "" && { complaint: topic }),
      level,
      lately: setting.lately,
      terms: {
        ...{ lift, helper, missingTools: [...missingTools] },
        ...(unreliable.trim() !== "" && share >= 0 && share <= 100 && { unreliable: share / 100 }),
      },
    };
    const answer = await ask({ wish, seed: newSeed() });
    if (answer === undefined) return;
    const { text, said, faults, seed, results } = settingOf(answer.exercise, knowledge.car.attributes, units);
    setDrawn(answer.difficulty);
    onSetting({ text, said, faults, seed, results });
    onDrawn();
  };
  const fits = drawn !== undefined && drawn.level === level && drawn.solvable;
  return (
    <Fold title="Draw one for me" openAtFirst={setting.faults.length === 0}>
      <p className="small soft">
        What is wrong, what the customer says and every result come from the knowledge. The car, the tools and
        how far the customer is to be trusted stay as they are set below; what is hidden and said is replaced.
      </p>
      <div className="fields">
        <Choice
          id="draw-topic"
          label="Topic"
          value={topic}
          options={[
            { value: "", name: "any complaint" },
            ...knowledge.complaints.map((c) => ({ value: c.id, name: capital(c.name) })),
          ]}
          onChange={setTopic}
        />
        <Choice id="draw-level" label="Difficulty" value={level} options={LEVELS} onChange={setLevel} />
      </div>
      <button type="button" className="wide" disabled={busy} onClick={() => void draw()}>
        {busy ? "Drawing ..." : setting.faults.length === 0 ? "Draw one" : "Draw another"}
      </button>
      <p role="status">
        {!busy && drawn !== undefined && (fits ? `Drawn: ${drawn.level}.` : nearestWords(drawn))}
      </p>
      {failed !== undefined && (
        <p className="trouble" role="alert">
          {failed}
        </p>
      )}
    </Fold>
  );
}

function nearestWords({ level, solvable }: Difficulty): string {
  return solvable
    ? `None as wanted came up; the nearest is ${level}. Draw again, or take another topic.`
    : "The best way does not end at what is hidden in the nearest that came up. Draw again, or take another topic.";
}
