"use client";
import { type ReactNode, useEffect, useMemo, useRef } from "react";
import { writeRecordingCsv } from "../../../lib/car/recording-csv.ts";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { useDraft } from "../../store/use-draft.ts";
import { speedUnit } from "../../text/amounts.ts";
import { fieldsOfDraft } from "../../text/draft-fields.ts";
import { StopNotices } from "../case/stop-notices.tsx";
import { useRanking } from "../case/use-ranking.ts";
import { whyForbidden } from "../check/forbidden.ts";
import { Choice } from "../choice.tsx";
import { saveFile } from "../save-file.ts";
import { goToPart, SheetPart } from "../sheet-part.tsx";
import { fieldsOfTurning } from "../shop/rotating-request.ts";
import { ShopFrame, type ShopProps } from "../shop/shop-frame.tsx";
import { CarThatTurns, EngineSpeed, SpeedUnit, TurningField } from "../shop/turning-field.tsx";
import { measuringChecks } from "./measuring-checks.ts";
import { holdsFrequencies, readShakeForm, takeRecording } from "./read-shake.ts";
import { RecordPart } from "./record-part.tsx";
import { RecordingFile } from "./recording-file.tsx";
import { ShakeResult } from "./shake-result.tsx";
import { useRecorder } from "./use-recorder.ts";

/** A passenger's phone as a meter of vibration: what shakes at which rate, and what on this car turns so. */
export function ShakeScreen() {
  return <ShopFrame title="Measure a shake" body={Shake} />;
}

function Shake({ knowledge, open, settings, onSettings }: ShopProps) {
  const of = open === undefined ? "" : `${open.state.caseId}/`;
  // The form of turning parts: a tyre size that was typed there is here too.
  const [draft, setDraft, ready] = useDraft(`${of}rotating`);
  const [kept, setKept, loaded] = useDraft(`${of}shake`);
  // By itself: the form is emptied once its figures are in the case, the recording stays and is read as before.
  const [speedFrom, setSpeedFrom] = useDraft(`${of}shake-speed-from`);
  const recorder = useRecorder((samples) => setKept(writeRecordingCsv(samples)));
  const running = recorder.progress !== undefined;
  const ofCase = fieldsOfTurning(open?.state.turning, settings);
  const fields = draft === "" ? ofCase : fieldsOfDraft(draft);
  const byGps = speedFrom !== "typed";
  const { taken, failed } = useMemo(
    () => (running ? {} : takeRecording(knowledge, kept, byGps)),
    [knowledge, kept, byGps, running],
  );
  useGoToWhatCounts(running, taken !== undefined);
  const read = readShakeForm(fields, taken?.held, settings);
  const onFields = (next: Readonly<Record<string, string>>) => setDraft(JSON.stringify(next));
  const form = { fields, problems: read.problems, ready, onFields };
  const speedUnknown = taken !== undefined && taken.held === undefined;
  // Frequencies typed on the screen of turning parts stay in its draft until they are kept there.
  const typedThere = holdsFrequencies(fields, ofCase);
  const record = (
    <RecordPart
      knowledge={knowledge}
      recorder={recorder}
      withSpeed={byGps}
      again={kept !== ""}
      ready={loaded}
      units={settings}
    />
  );
  return (
    <>
      <p>
        A phone feels how often the car shakes in a second. At a known speed that names what turns as often;
        it does not yet say what is wrong with it.
      </p>
      <SheetPart id="record" title="Record">
        {!running && (
          <div className="fields">
            <Choice
              id="speed-from"
              label="Road speed"
              value={byGps ? "gps" : "typed"}
              options={[
                { value: "gps", name: "by GPS while recording" },
                { value: "typed", name: "typed" },
              ]}
              onChange={setSpeedFrom}
            />
            {(!byGps || speedUnknown) && (
              <TurningField form={form} id="speed" label="Speed held" unit={speedUnit(settings)} />
            )}
            <SpeedUnit settings={settings} onSettings={onSettings} />
          </div>
        )}
        {open === undefined ? (
          record
        ) : (
          <MayBeDriven knowledge={knowledge} state={open.state}>
            {record}
          </MayBeDriven>
        )}
        {!running && <RecordingFile onTaken={setKept} />}
      </SheetPart>
      {failed !== undefined && (
        <p className="trouble" role="alert">
          The kept recording cannot be read: {failed}
        </p>
      )}
      {taken !== undefined && (
        <SheetPart id="shakes" title="What shakes">
          {byGps && speedUnknown && (fields["speed"] ?? "").trim() === "" && (
            <p className="notice">This recording holds too few speeds. Type the speed that was held.</p>
          )}
          <ShakeResult
            knowledge={knowledge}
            taken={taken}
            read={read}
            open={open}
            units={settings}
            onKept={() => !typedThere && setDraft("")}
          />
          <button type="button" onClick={() => saveFile("shake.csv", kept, "text/csv")}>
            Save the recording as a file
          </button>
        </SheetPart>
      )}
      {!running && (
        <SheetPart id="car-turning" title="The car">
          <CarThatTurns form={form} />
          <div className="fields">
            <EngineSpeed form={form} />
          </div>
        </SheetPart>
      )}
    </>
  );
}

/** While it records nothing else is on the screen; once it is done, what came of it is what was waited for. */
function useGoToWhatCounts(running: boolean, taken: boolean): void {
  const was = useRef(running);
  useEffect(() => {
    if (was.current === running) return;
    was.current = running;
    goToPart(running || !taken ? "record" : "shakes");
  }, [running, taken]);
}

/** A car with a stop notice is not driven for a recording either; one from a file can still be looked at. */
function MayBeDriven({
  knowledge,
  state,
  children,
}: {
  readonly knowledge: Knowledge;
  readonly state: CaseState;
  readonly children: ReactNode;
}) {
  const { ranked, failed } = useRanking(knowledge, state);
  if (failed !== undefined)
    return (
      <p className="trouble" role="alert">
        Whether a stop notice stands for this car could not be worked out: {failed} Load the page again.
      </p>
    );
  if (ranked === undefined) return <p role="status">Looking whether a stop notice stands ...</p>;
  const why = measuringChecks(knowledge)
    .map((check) => whyForbidden(knowledge, state, ranked.notices, check, undefined))
    .find((words) => words !== undefined);
  if (ranked.notices.length === 0 && why === undefined) return children;
  return (
    <>
      <StopNotices knowledge={knowledge} notices={ranked.notices} />
      <p className="trouble">
        {why ?? "A stop notice stands for this car: it must not be driven to record."}
      </p>
    </>
  );
}
