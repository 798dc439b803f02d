"use client";
import { useRouter } from "next/navigation";
import { useEffect, useRef, useState } from "react";
import type { OpenRelease } from "../../knowledge/open-release.ts";
import { useKnowledge } from "../../knowledge/use-knowledge.ts";
import { addEntries } from "../../store/case-database.ts";
import { newEntry, newId } from "../../store/new-entry.ts";
import { useDraft } from "../../store/use-draft.ts";
import { useSettings } from "../../store/use-settings.ts";
import { wakeSync } from "../../sync/sync.ts";
import { messageOf } from "../../text/message-of.ts";
import { type CarFields, carOfFields } from "../case/car-fields.ts";
import { CarForm } from "../case/car-form.tsx";
import { submitOnKeys } from "../submit-on-keys.ts";
import { SheetPart } from "../sheet-part.tsx";
import { SiteHead } from "../site-head.tsx";

interface NewCase {
  readonly vehicle: string;
  readonly plate: string;
  readonly customer: string;
  readonly words: string;
  readonly car: CarFields;
}

const EMPTY: NewCase = { vehicle: "", plate: "", customer: "", words: "", car: {} };

function parseDraft(draft: string): NewCase {
  if (draft === "") return EMPTY;
  try {
    return { ...EMPTY, ...(JSON.parse(draft) as Partial<NewCase>) };
  } catch {
    return EMPTY;
  }
}

/** A new case: the car by a few picks, and what the customer says. A call goes on at the desk. */
export function NewCaseScreen({ call = false }: { readonly call?: boolean }) {
  const knowledge = useKnowledge();
  return (
    <>
      <SiteHead />
      <main id="main" className="sheet list-sheet">
        <h1>{call ? "Take a call" : "New case"}</h1>
        {knowledge.is === "loading" && <p role="status">Getting the knowledge ...</p>}
        {knowledge.is === "failed" && (
          <p className="trouble" role="alert">
            The knowledge did not arrive: {knowledge.message} Load the page again.
          </p>
        )}
        {knowledge.is === "ready" && <NewCaseForm release={knowledge.value} call={call} />}
      </main>
    </>
  );
}

function NewCaseForm({ release, call }: { readonly release: OpenRelease; readonly call: boolean }) {
  const router = useRouter();
  const [settings, setSettings] = useSettings();
  const [draft, setDraft, ready] = useDraft("new-case");
  const [failed, setFailed] = useState<string>();
  const form = parseDraft(draft);
  const set = (part: Partial<NewCase>) => setDraft(JSON.stringify({ ...form, ...part }));
  const { attributes } = release.knowledge.car;
  const { car, problems } = carOfFields(attributes, form.car, settings);
  const words = form.words.trim();
  const stuck = Object.keys(problems).length > 0 || words.length > 4000;

  const box = useRef<HTMLTextAreaElement>(null);
  useEffect(() => {
    // Who takes a call types at once.
    if (call && ready) box.current?.focus();
  }, [call, ready]);

  const open = async (desk: boolean) => {
    if (stuck) return;
    const id = newId();
    const plate = form.plate.trim();
    try {
      const opened = newEntry(
        id,
        {
          kind: "opened",
          release: release.sha256,
          knowledgeVersion: release.version,
          car,
          customer: form.customer.trim(),
          vehicle: form.vehicle.trim(),
          ...(plate !== "" && { plate }),
        },
        settings.by,
      );
      const told = words === "" ? [] : [newEntry(id, { kind: "told", text: words }, settings.by)];
      await addEntries([opened, ...told]);
      wakeSync();
      setDraft("");
      router.push(`${desk ? "/case/desk" : "/case"}?id=${id}`);
    } catch (error) {
      setFailed(`The case could not be saved on this device: ${messageOf(error)}`);
    }
  };

  const text = (key: "vehicle" | "plate" | "customer", label: string, most: number) => (
    <div>
      <label htmlFor={`new-${key}`}>{label}</label>
      <input
        id={`new-${key}`}
        autoComplete="off"
        maxLength={most}
        value={form[key]}
        disabled={!ready}
        onChange={(event) => set({ [key]: event.target.value })}
      />
    </div>
  );

  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void open(call);
      }}
    >
      <SheetPart id="words" title="What does the customer say?">
        <label htmlFor="new-words">In the customer&apos;s own words</label>
        <textarea
          id="new-words"
          ref={box}
          onKeyDown={submitOnKeys}
          rows={6}
          value={form.words}
          disabled={!ready}
          placeholder="What it does, when, and where it seems to come from"
          onChange={(event) => set({ words: event.target.value })}
        />
        {words.length > 4000 && (
          <p className="trouble">That is {words.length} characters; 4000 fit. The rest can be added later.</p>
        )}
        <p className="small soft">May be left empty: everything can be ticked by hand on the next page.</p>
      </SheetPart>
      <SheetPart id="car" title="The car">
        <p className="small soft">
          Leave out what is not known; the commonest is then assumed with its share.
        </p>
        <CarForm
          attributes={attributes}
          fields={form.car}
          problems={problems}
          units={settings}
          onFields={(fields) => set({ car: fields })}
          onUnits={setSettings}
        />
      </SheetPart>
      <SheetPart id="whose" title="Whose car">
        <div className="fields">
          {text("vehicle", "Vehicle", 200)}
          {text("plate", "Plate", 20)}
          {text("customer", "Customer", 200)}
        </div>
      </SheetPart>
      {failed !== undefined && (
        <p className="trouble" role="alert">
          {failed}
        </p>
      )}
      <div className="next-bar always">
        <div className="next-pair">
          <button type="submit" className="main" disabled={!ready || stuck}>
            {words === "" ? "Open the case" : "Open the case and read it"}
            {call && <kbd>Ctrl + Enter</kbd>}
          </button>
          {!call && (
            <button type="button" disabled={!ready || stuck} onClick={() => void open(true)}>
              Take a call
            </button>
          )}
        </div>
      </div>
    </form>
  );
}
