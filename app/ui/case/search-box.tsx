"use client";
import { useId, useState } from "react";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { useAnswer } from "../../engine/use-answer.ts";
import { capital, levelWords, nameOfPlace } from "../../text/names.ts";

interface Props {
  readonly knowledge: Knowledge;
  readonly onAnswer: (finding: string, state: "present" | "absent", level?: string) => void;
  /** Left out: no check can be opened. */
  readonly onCheck?: ((id: string) => void) | undefined;
}

/** Search over every finding and check, by any of its names. */
export function SearchBox({ knowledge, onAnswer, onCheck }: Props) {
  const [query, setQuery] = useState("");
  const id = useId();
  const trimmed = query.trim();
  const found = useAnswer("search", { query: trimmed }, trimmed.length < 2 ? undefined : trimmed);
  const items = (found.value ?? []).filter((item) => item.kind === "finding" || onCheck !== undefined);
  return (
    <div role="search">
      <label htmlFor={id}>Search findings{onCheck && " and checks"} by any name</label>
      <input
        id={id}
        type="search"
        autoComplete="off"
        value={query}
        onChange={(event) => setQuery(event.target.value)}
      />
      <p className="hidden" role="status">
        {found.value !== undefined && !found.busy ? `${items.length} found` : ""}
      </p>
      {found.failed !== undefined && found.value === undefined && <p className="trouble">{found.failed}</p>}
      {found.value !== undefined && !found.busy && items.length === 0 && (
        <p className="soft">Nothing by that name. Try another word for it.</p>
      )}
      <ul className="plain-list">
        {items.map((item) => (
          <li key={`${item.kind}:${item.id}`} className="found">
            {item.kind === "check" ? (
              <FoundCheck knowledge={knowledge} id={item.id} name={item.name} onCheck={onCheck} />
            ) : (
              <FoundFinding knowledge={knowledge} id={item.id} name={item.name} onAnswer={onAnswer} />
            )}
          </li>
        ))}
      </ul>
    </div>
  );
}

function FoundCheck({
  knowledge,
  id,
  name,
  onCheck,
}: Pick<Props, "knowledge" | "onCheck"> & { readonly id: string; readonly name: string }) {
  const places = knowledge.checks.find((c) => c.id === id)?.places ?? [];
  return (
    <>
      <span>
        {capital(name)} <span className="soft">(check)</span>
      </span>
      <span className="row">
        {places.map((place) => (
          <button
            type="button"
            key={place}
            aria-label={`Open the check: ${name}, ${nameOfPlace(knowledge, place)}`}
            onClick={() => onCheck?.(`${id}@${place}`)}
          >
            {nameOfPlace(knowledge, place)}
          </button>
        ))}
      </span>
    </>
  );
}

function FoundFinding({
  knowledge,
  id,
  name,
  onAnswer,
}: Pick<Props, "knowledge" | "onAnswer"> & { readonly id: string; readonly name: string }) {
  const observation = knowledge.observations.find((o) => o.id === id);
  const [place, setPlace] = useState("");
  const finding = place === "" ? id : `${id}@${place}`;
  const graded = observation !== undefined && observation.levels.length > 1;
  return (
    <>
      <span>{capital(name)}</span>
      <span className="row">
        {observation !== undefined && observation.places.length > 1 && (
          <select
            aria-label={`Where: ${name}`}
            className="short"
            value={place}
            onChange={(e) => setPlace(e.target.value)}
          >
            <option value="">place not known</option>
            {observation.places.map((p) => (
              <option key={p} value={p}>
                {nameOfPlace(knowledge, p)}
              </option>
            ))}
          </select>
        )}
        {graded ? (
          observation.levels.map((level) => (
            <button
              type="button"
              key={level}
              aria-label={`${name}: ${levelWords(level)}`}
              onClick={() => onAnswer(finding, "present", level)}
            >
              {capital(levelWords(level))}
            </button>
          ))
        ) : (
          <button type="button" aria-label={`${name}: yes`} onClick={() => onAnswer(finding, "present")}>
            Yes
          </button>
        )}
        <button type="button" aria-label={`${name}: no`} onClick={() => onAnswer(finding, "absent")}>
          No
        </button>
      </span>
    </>
  );
}
