"use client";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { EntryBody } from "../../store/new-entry.ts";
import { useKept } from "../../store/use-kept.ts";
import type { Settings } from "../../store/use-settings.ts";
import { capital } from "../../text/names.ts";
import { saidLines } from "../../text/said-lines.ts";
import { Fold } from "../fold.tsx";
import { SheetPart } from "../sheet-part.tsx";
import { CarForm } from "./car-form.tsx";
import { type CarFields, carLine, carOfFields, fieldsOfCar } from "./car-fields.ts";
import { HandTicks } from "./hand-ticks.tsx";
import { Proposals } from "./proposals.tsx";
import { SearchBox } from "./search-box.tsx";
import { ToldBox } from "./told-box.tsx";

interface Props {
  readonly knowledge: Knowledge;
  readonly state: CaseState;
  readonly settings: Settings;
  readonly onSettings: (change: Partial<Settings>) => void;
  readonly append: (...bodies: readonly EntryBody[]) => void;
  /** Left out: nobody is at the car, so no check can be opened, and whatever is added was told. */
  readonly onCheck?: (id: string) => void;
  /** Everything that was read has been taken or refused by hand. */
  readonly onJudged?: () => void;
}

/** What was told, and of which car. */
export function ComplaintPart(props: Props) {
  const { knowledge, state, settings, onSettings, append, onCheck, onJudged } = props;
  const first = state.text.length === 0 && state.answers.length === 0;
  return (
    <SheetPart id="complaint" title="Complaint and car">
      <SoFar knowledge={knowledge} state={state} />
      <Proposals
        state={state}
        settings={settings}
        onSettings={onSettings}
        append={append}
        onJudged={onJudged}
      />
      {first && <ToldBox caseId={state.caseId} first onTold={(text) => append({ kind: "told", text })} />}
      <HandTicks
        knowledge={knowledge}
        state={state}
        onAnswer={(finding, answer) => append({ kind: "answered", finding, state: answer, how: "report" })}
      />
      <Fold title="Search, or add more words">
        <SearchBox
          knowledge={knowledge}
          onAnswer={(finding, is, level) => {
            const remote = onCheck === undefined || settings.asker === "owner" || settings.asker === "driver";
            const observed = knowledge.observations.some((o) => o.id === finding.split("@")[0]);
            append({
              kind: "answered",
              finding,
              state: is,
              how: observed && !remote ? "check" : "report",
              ...(level !== undefined && { level }),
            });
          }}
          onCheck={onCheck}
        />
        {!first && (
          <ToldBox caseId={state.caseId} first={false} onTold={(text) => append({ kind: "told", text })} />
        )}
      </Fold>
      <CarDetails {...props} />
    </SheetPart>
  );
}

/** Everything answered so far. */
function SoFar({ knowledge, state }: { readonly knowledge: Knowledge; readonly state: CaseState }) {
  const answers = [
    { word: "Yes", lines: saidLines(knowledge, state.answers, "present") },
    { word: "No", lines: saidLines(knowledge, state.answers, "absent") },
  ].filter((a) => a.lines.length > 0);
  if (answers.length === 0) return null;
  return (
    <dl className="so-far">
      {answers.map(({ word, lines }) => (
        <div key={word}>
          <dt>{word}</dt>
          {lines.map(({ key, of, names }) => (
            <dd key={key}>
              {of !== "" && <strong>{capital(of)}</strong>}
              {of !== "" && names.length > 0 && ": "}
              {names.join("; ")}
            </dd>
          ))}
        </div>
      ))}
    </dl>
  );
}

function CarDetails({ knowledge, state, settings, onSettings, append }: Props) {
  const { attributes } = knowledge.car;
  const [edited, setEdited] = useKept<CarFields | undefined>(`${state.caseId}/car`, undefined);
  const fields = edited ?? fieldsOfCar(attributes, state.car, settings);
  const read = carOfFields(attributes, fields, settings);
  const line = carLine(attributes, state.car, settings);
  const changed = edited !== undefined && JSON.stringify(read.car) !== JSON.stringify(state.car);
  return (
    <Fold
      openAtFirst={edited !== undefined}
      title={
        <>
          <span>The car{line === "" ? ": nothing told" : <span className="soft">: {line}</span>}</span>
        </>
      }
    >
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (Object.keys(read.problems).length > 0) return;
          append({ kind: "car-changed", car: read.car });
          setEdited(undefined);
        }}
      >
        <CarForm
          attributes={attributes}
          fields={fields}
          problems={read.problems}
          units={settings}
          onFields={setEdited}
          onUnits={onSettings}
        />
        <button type="submit" className="wide" disabled={!changed || Object.keys(read.problems).length > 0}>
          Save the car
        </button>
      </form>
    </Fold>
  );
}
