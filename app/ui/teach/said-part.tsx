"use client";
import { useState } from "react";
import { saidWords } from "../../../lib/training/index.ts";
import { capital } from "../../text/names.ts";
import { HandTicks } from "../case/hand-ticks.tsx";
import { Choice } from "../choice.tsx";
import { SheetPart } from "../sheet-part.tsx";
import type { YesNoState } from "../yes-no.tsx";
import { newSeed } from "./new-seed.ts";
import type { PartProps } from "./part-props.ts";
import { readSetting } from "./setting.ts";
import { useExerciseAnswer } from "./use-exercise-answer.ts";

const COUNTS = ["1", "2", "3", "4", "5", "6", "8", "10"].map((n) => ({
  value: n,
  name: `${n} things about it`,
}));

/** What the customer says: drawn from the knowledge for what is hidden, then changed by hand. */
export function SaidPart(props: PartProps) {
  const { release, setting, problems, onSetting } = props;
  const { knowledge } = release;
  const { said, text, lately } = setting;
  // Words that only list the findings follow them; what somebody wrote stays.
  const follows = text.trim() === "" || text === saidWords(knowledge, said);
  const say = (next: typeof said) =>
    onSetting({ said: next, ...(follows && { text: saidWords(knowledge, next) }) });
  const answer = (finding: string, state: YesNoState) => {
    if (knowledge.contexts.some((c) => c.id === finding)) {
      const others = lately.filter((c) => c !== finding);
      onSetting({ lately: state === "present" ? [...others, finding] : others });
      return;
    }
    const others = said.filter((s) => s.finding !== finding);
    if (state !== "unknown") {
      const at = said.findIndex((s) => s.finding === finding);
      say(at < 0 ? [...said, { finding, state }] : said.with(at, { finding, state }));
    } else say(others);
  };
  const answers = [
    ...said.map((s) => ({ ...s, by: "report" as const })),
    ...lately.map((finding) => ({ finding, state: "present" as const, by: "report" as const })),
  ];
  return (
    <SheetPart id="said" title="What the customer says">
      {problems["said"] !== undefined && <p className="notice">{problems["said"]}</p>}
      <DrawSaid {...props} />
      <label htmlFor="said-text">In the customer&apos;s own words</label>
      <textarea
        id="said-text"
        rows={5}
        value={text}
        aria-invalid={problems["text"] !== undefined}
        onChange={(event) => onSetting({ text: event.target.value })}
      />
      {problems["text"] !== undefined && <p className="trouble small">{problems["text"]}</p>}
      {!follows && (
        <p className="row">
          <button type="button" onClick={() => onSetting({ text: saidWords(knowledge, said) })}>
            Write the words anew from the ticks
          </button>
        </p>
      )}
      <p className="label">As findings</p>
      <HandTicks
        knowledge={knowledge}
        state={{ answers, text: text.trim() === "" ? [] : [text] }}
        onAnswer={answer}
      />
    </SheetPart>
  );
}

/** Lets the knowledge say what a customer would tell of the hidden faults. */
function DrawSaid({ release, setting, car, onSetting }: PartProps) {
  const { knowledge } = release;
  const [picked, setPicked] = useState("");
  const [count, setCount] = useState("4");
  const { busy, failed, ask } = useExerciseAnswer(release, "said");
  const causes = setting.faults.filter((f) => f.causes);
  const shown = knowledge.complaints.filter(({ id }) =>
    causes.every((c) =>
      knowledge.faults.find((f) => f.id === c.fault)?.shows.some((s) => s.complaint === id),
    ),
  );
  const complaint =
    shown.find((c) => c.id === picked) ??
    shown.find((c) => setting.said.some((s) => s.finding === c.id && s.state === "present")) ??
    shown[0];
  if (causes.length === 0)
    return (
      <p className="small soft">
        Hide a fault first; then the knowledge can say what a customer tells of it.
      </p>
    );
  if (complaint === undefined)
    return (
      <p className="notice">
        No complaint comes from all of these faults at once. Mark some of them as innocent wear.
      </p>
    );
  const draw = async () => {
    // Name and words play no part in it, and may still be missing.
    const { exercise } = readSetting(
      { ...setting, name: "draft", text: "", said: [{ finding: complaint.id, state: "present" }] },
      knowledge.car.attributes,
      { distance: "km", length: "mm" },
    );
    if (exercise === undefined) return;
    const wish = { exercise: { ...exercise, car }, complaint: complaint.id, told: Number(count) };
    const answer = await ask({ wish, seed: newSeed() });
    if (answer !== undefined) onSetting(answer);
  };
  return (
    <div className="fields">
      <Choice
        id="said-complaint"
        label="The complaint"
        value={complaint.id}
        options={shown.map((c) => ({ value: c.id, name: capital(c.name) }))}
        onChange={setPicked}
      />
      <Choice id="said-count" label="How much is told" value={count} options={COUNTS} onChange={setCount} />
      <button type="button" disabled={busy} onClick={() => void draw()}>
        {busy ? "Listening ..." : "Let the customer speak"}
      </button>
      {failed !== undefined && (
        <p className="trouble" role="alert">
          {failed}
        </p>
      )}
    </div>
  );
}
