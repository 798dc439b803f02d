"use client";
import { useState } from "react";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { EntryBody } from "../../store/new-entry.ts";
import { pagePerson } from "../../store/person-here.ts";
import { NO_NAME, useSettings } from "../../store/use-settings.ts";
import { usePeople } from "../../sync/use-people.ts";

type Append = (...bodies: readonly EntryBody[]) => void;

/** Who has the case, and a way to take it, give it to somebody or give it up. */
export function WhoHasIt({ state, append }: { readonly state: CaseState; readonly append: Append }) {
  const [open, setOpen] = useState(false);
  const { assigned } = state;
  return (
    <div className="no-print">
      <div className="row">
        <span>
          Who has it: <strong>{assigned?.name ?? "nobody"}</strong>
        </span>
        <button type="button" className="plain" aria-expanded={open} onClick={() => setOpen(!open)}>
          Change
        </button>
      </div>
      {open && <GiveCase state={state} append={append} onDone={() => setOpen(false)} />}
    </div>
  );
}

function GiveCase({
  state,
  append,
  onDone,
}: {
  readonly state: CaseState;
  readonly append: Append;
  readonly onDone: () => void;
}) {
  const [settings] = useSettings();
  const people = usePeople();
  const person = pagePerson();
  const [picked, setPicked] = useState("");
  const { assigned } = state;
  const give = (to: string, account?: string): void => {
    append({ kind: "assigned", to, ...(account !== undefined && { account }) });
    onDone();
  };
  const mine = person === undefined ? assigned?.name === settings.by : assigned?.account === person.id;
  const others = people.filter(({ id }) => id !== person?.id);
  const giveToPicked = (): void => {
    const colleague = others.find(({ id }) => id === picked);
    if (colleague !== undefined) give(colleague.name.slice(0, 80), colleague.id);
    else if (person === undefined && picked.trim() !== "") give(picked.trim());
  };
  return (
    <div className="give-case">
      <div className="row">
        {!mine && (person !== undefined || settings.by !== NO_NAME) && (
          <button type="button" className="main" onClick={() => give(settings.by, person?.id)}>
            I take it
          </button>
        )}
        {assigned !== undefined && (
          <button
            type="button"
            onClick={() => {
              append({ kind: "assigned" });
              onDone();
            }}
          >
            Nobody has it
          </button>
        )}
      </div>
      {(person === undefined || others.length > 0) && (
        <form
          className="row"
          onSubmit={(event) => {
            event.preventDefault();
            giveToPicked();
          }}
        >
          <div className="give-whom">
            <label htmlFor="give-whom">Give it to</label>
            {person === undefined ? (
              <input
                id="give-whom"
                autoComplete="off"
                maxLength={80}
                value={picked}
                onChange={(event) => setPicked(event.target.value)}
              />
            ) : (
              <select id="give-whom" value={picked} onChange={(event) => setPicked(event.target.value)}>
                <option value="">Choose a colleague</option>
                {others.map(({ id, name }) => (
                  <option key={id} value={id}>
                    {name}
                  </option>
                ))}
              </select>
            )}
          </div>
          <button type="submit" disabled={picked.trim() === ""}>
            Give it
          </button>
        </form>
      )}
    </div>
  );
}
