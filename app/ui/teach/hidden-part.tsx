"use client";
import { useEffect, useMemo, useState } from "react";
import { askExercises } from "../../engine/exercise-client.ts";
import { messageOf } from "../../text/message-of.ts";
import { capital, nameOfPlace, nameOfSuspect } from "../../text/names.ts";
import { SheetPart } from "../sheet-part.tsx";
import { Choice } from "../choice.tsx";
import type { PartProps } from "./part-props.ts";
import { type Pickable, PickList } from "./pick-list.tsx";

const ROLES = [
  { value: "cause", name: "causes the complaint" },
  { value: "innocent", name: "is only there as well (innocent wear)" },
] as const;

const MOST_FAULTS = 8;

interface PickableFault extends Pickable {
  readonly places: readonly string[];
}

/** What is wrong with the car: faults at places, behind the complaint or innocent. */
export function HiddenPart({ release, setting, car, problems, onSetting }: PartProps) {
  const { knowledge } = release;
  const { faults, lately } = setting;
  const possible = usePossible(release, JSON.stringify({ car, lately }));
  const things = useMemo(() => pickable(release, possible.ids), [release, possible.ids]);
  const full = faults.length >= MOST_FAULTS;
  return (
    <SheetPart id="hidden" title="What is wrong with it">
      <p className="small soft">Hidden from the trainee until the verdict is given.</p>
      {problems["faults"] !== undefined && <p className="notice">{problems["faults"]}</p>}
      <ul className="plain-list" aria-label="Hidden faults">
        {faults.map(({ fault, place, causes }, k) => {
          const name = capital(nameOfSuspect(knowledge, `${fault}@${place}`));
          const change = (next: typeof faults) => onSetting({ faults: next });
          return (
            <li key={`${fault}@${place}`} className="hidden-fault">
              <strong>{name}</strong>
              <Choice
                id={`role-${fault}-${place}`}
                label="This fault"
                value={causes ? "cause" : "innocent"}
                options={ROLES}
                onChange={(role) => change(faults.with(k, { fault, place, causes: role === "cause" }))}
              />
              <button
                type="button"
                aria-label={`Take out: ${name}`}
                onClick={() => change(faults.toSpliced(k, 1))}
              >
                Take out
              </button>
            </li>
          );
        })}
      </ul>
      {possible.failed !== undefined && (
        <p className="trouble" role="alert">
          {possible.failed}
        </p>
      )}
      {full ? (
        <p className="notice">Eight faults are enough for one car. Take one out to hide another.</p>
      ) : (
        <PickList label={faults.length === 0 ? "Hide a fault" : "Hide another fault"} things={things}>
          {({ id, name, places }) =>
            places.map((place) => (
              <button
                type="button"
                key={place}
                disabled={faults.some((f) => f.fault === id && f.place === place)}
                aria-label={`Hide: ${name}, ${nameOfPlace(knowledge, place)}`}
                onClick={() =>
                  onSetting({ faults: [...faults, { fault: id, place, causes: faults.length === 0 }] })
                }
              >
                {capital(nameOfPlace(knowledge, place))}
              </button>
            ))
          }
        </PickList>
      )}
    </SheetPart>
  );
}

/** Faults that this car can have; what was known before is kept while a newer car is looked at. */
function usePossible(
  release: PartProps["release"],
  key: string,
): { readonly ids: readonly string[]; readonly failed: string | undefined } {
  const [state, setState] = useState<{ ids: readonly string[]; failed: string | undefined }>({
    ids: [],
    failed: undefined,
  });
  useEffect(() => {
    let gone = false;
    const { car, lately } = JSON.parse(key) as { car: PartProps["car"]; lately: readonly string[] };
    askExercises(release, "suspects", { car, lately }).then(
      (ids) => !gone && setState({ ids, failed: undefined }),
      (error: unknown) => !gone && setState((old) => ({ ...old, failed: messageOf(error) })),
    );
    return () => {
      gone = true;
    };
  }, [release, key]);
  return state;
}

function pickable({ knowledge }: PartProps["release"], ids: readonly string[]): PickableFault[] {
  const places = new Map<string, string[]>();
  for (const id of ids) {
    const [fault = "", place = ""] = id.split("@");
    places.set(fault, [...(places.get(fault) ?? []), place]);
  }
  const parts = new Map(knowledge.parts.map((p) => [p.id, p]));
  return knowledge.faults.flatMap((fault) => {
    const at = places.get(fault.id);
    const part = parts.get(fault.part);
    if (at === undefined || part === undefined) return [];
    const name = `${capital(part.name)}: ${fault.name}`;
    const words = [name, ...part.otherNames, ...part.generalNames, ...fault.otherNames]
      .join(" ")
      .toLowerCase();
    return [{ id: fault.id, name, words, places: at }];
  });
}
