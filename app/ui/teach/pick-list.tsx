"use client";
import { type ReactNode, useId, useState } from "react";

/** Something that can be picked from many. */
export interface Pickable {
  readonly id: string;
  readonly name: string;
  /** All that it may be looked for by, in small letters. */
  readonly words: string;
}

const MOST_SHOWN = 12;

/** A field to look for something among many, with what can be done with each that is found beside it. */
export function PickList<T extends Pickable>({
  label,
  things,
  children,
}: {
  readonly label: string;
  readonly things: readonly T[];
  readonly children: (thing: T) => ReactNode;
}) {
  const [query, setQuery] = useState("");
  const id = useId();
  const words = query.trim().toLowerCase().split(/\s+/).filter(Boolean);
  const found =
    words.length === 0 ? [] : things.filter((thing) => words.every((w) => thing.words.includes(w)));
  return (
    <div role="search">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="search"
        autoComplete="off"
        value={query}
        onChange={(event) => setQuery(event.target.value)}
      />
      <p role="status" className="small soft">
        {words.length > 0 &&
          (found.length === 0
            ? "Nothing by that name on this car. Try another word for it."
            : found.length > MOST_SHOWN
              ? `${found.length} found, the first ${MOST_SHOWN} shown: add a word.`
              : `${found.length} found`)}
      </p>
      <ul className="plain-list">
        {found.slice(0, MOST_SHOWN).map((thing) => (
          <li key={thing.id} className="found">
            <span>{thing.name}</span>
            <span className="row">{children(thing)}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}
