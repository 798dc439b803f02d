"use client";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Progress } from "../../sensor/recorder.ts";
import { useKept } from "../../store/use-kept.ts";
import type { Units } from "../../text/amounts.ts";
import { Choice } from "../choice.tsx";
import { CautionBox } from "../knowledge/caution-box.tsx";
import { speedWords } from "../shop/order-table.tsx";
import { LevelLine } from "./level-line.tsx";
import { measuringCautions } from "./measuring-checks.ts";
import type { Recorder } from "./use-recorder.ts";

const LENGTHS = [
  { value: "10", name: "10 s" },
  { value: "20", name: "20 s" },
  { value: "30", name: "30 s" },
  { value: "60", name: "60 s" },
] as const;

const OWN_CAUTIONS = [
  "Never by the driver: a passenger holds the phone, starts it and reads it. The driver drives, and looks at the road.",
  "Straight, even, empty road. Keep to the limits and the law of the place, and to a speed at which it shakes without getting worse.",
];

/** Records the shake: the caution first, then the start, then how it goes. */
export function RecordPart({
  knowledge,
  recorder,
  withSpeed,
  again,
  ready,
  units,
}: {
  readonly knowledge: Knowledge;
  readonly recorder: Recorder;
  readonly withSpeed: boolean;
  /** There is a recording, which a new one takes the place of. */
  readonly again: boolean;
  readonly ready: boolean;
  readonly units: Units;
}) {
  const [read, setRead] = useKept("shake/caution-read", false);
  const [length, setLength] = useKept<(typeof LENGTHS)[number]["value"]>("shake/length", "20");
  const { progress, asking, trouble, start, stop } = recorder;
  if (progress !== undefined) return <Recording progress={progress} units={units} onStop={stop} />;
  return (
    <>
      <CautionBox texts={[...OWN_CAUTIONS, ...measuringCautions(knowledge)]} />
      {read ? (
        <>
          <p>
            Lay the phone flat on the seat rail, the console or the floor, or press it against the seat: what
            is soft or loose shakes by itself. Hold one steady speed, then start. After 5 s it begins.
          </p>
          <div className="fields">
            <Choice
              id="shake-length"
              label="Record for"
              value={length}
              options={LENGTHS}
              onChange={setLength}
            />
          </div>
          <button
            type="button"
            className="main wide"
            disabled={asking || !ready}
            onClick={() => start(Number(length), withSpeed)}
          >
            {again ? "Record again" : "Start"}
          </button>
          {again && (
            <p className="small soft">
              A new recording takes the place of the one below. Save that one as a file to keep both.
            </p>
          )}
        </>
      ) : (
        <button type="button" className="main wide" onClick={() => setRead(true)}>
          I have read this and I am not driving
        </button>
      )}
      {trouble !== undefined && (
        <p className="trouble" role="alert">
          {trouble}
        </p>
      )}
    </>
  );
}

function Recording({
  progress,
  units,
  onStop,
}: {
  readonly progress: Progress;
  readonly units: Units;
  readonly onStop: () => void;
}) {
  const { stage, left, seconds, count, levels, kmh, speedTrouble } = progress;
  return (
    <>
      <p role="status" className="recording-stage">
        {stage === "ready-soon" ? "Lay the phone down: it begins shortly." : "Recording. Hold the speed."}
      </p>
      <p className="recording-left number" aria-hidden="true">
        {Math.ceil(left)} s
      </p>
      <LevelLine levels={levels} />
      <p className="small">
        <span className="number">
          {stage === "recording" && `${seconds.toFixed(0)} s recorded, ${count} readings; `}
          shaking {(levels.at(-1) ?? 0).toFixed(2)} m/s²
        </span>
        {kmh !== undefined && <span className="number">; {speedWords(kmh, units)} by GPS</span>}
      </p>
      {speedTrouble !== undefined && <p className="notice">{speedTrouble}</p>}
      <button type="button" className="main wide" onClick={onStop}>
        Stop
      </button>
    </>
  );
}
