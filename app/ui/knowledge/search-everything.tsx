"use client";
import { useSearchParams } from "next/navigation";
import { type RefObject, useEffect, useId, useRef, useState } from "react";
import type { Found } from "../../../lib/words/index.ts";
import { useAnswer } from "../../engine/use-answer.ts";
import { capital } from "../../text/names.ts";
import { checkHref, findingHref, partHref } from "../../text/page-links.ts";
import { Row } from "./row.tsx";

const KINDS: { readonly [K in Found["kind"]]: string } = {
  part: "part",
  fault: "way it fails",
  check: "check",
  complaint: "complaint",
  feature: "what a complaint is like",
  observation: "finding",
  context: "happened lately",
};

function hrefOf({ kind, id, part }: Found): string {
  if (kind === "part") return partHref(id);
  if (kind === "fault") return partHref(part ?? "", id);
  return kind === "check" ? checkHref(id) : findingHref(id);
}

/**
 * One box over everything that has a page, by any of its names.
 *
 * What is asked stands in the address, so that it can be kept and gone back to. From the box, Enter and the arrow keys go
 * into the results.
 */
export function SearchEverything() {
  const asked = useSearchParams().get("q") ?? "";
  const [query, setQuery] = useState(asked);
  const id = useId();
  const form = useRef<HTMLFormElement>(null);
  const results = useRef<HTMLUListElement>(null);
  useArrowKeys(form);
  const trimmed = query.trim();
  const found = useAnswer("find", { query: trimmed }, trimmed.length < 2 ? undefined : trimmed);

  const change = (text: string) => {
    setQuery(text);
    const address = text.trim() === "" ? "/search" : `/search?q=${encodeURIComponent(text.trim())}`;
    window.history.replaceState(null, "", address);
  };
  return (
    <form
      ref={form}
      role="search"
      action="/search"
      onSubmit={(event) => {
        event.preventDefault();
        results.current?.querySelector("a")?.focus();
      }}
    >
      <label htmlFor={id}>Parts, ways they fail, checks and findings, by any name</label>
      <input
        id={id}
        name="q"
        type="search"
        autoComplete="off"
        enterKeyHint="search"
        value={query}
        onChange={(event) => change(event.target.value)}
      />
      <p className="small soft" role="status">
        {found.value !== undefined && !found.busy && found.value.length > 0 && `${found.value.length} found`}
        {found.busy && found.failed === undefined && "Looking ..."}
      </p>
      {found.failed !== undefined && found.value === undefined && (
        <p className="trouble" role="alert">
          The search could not be made: {found.failed}
        </p>
      )}
      {found.value !== undefined && !found.busy && found.value.length === 0 && (
        <p>Nothing by that name. Try another word for it, or look through the lists above.</p>
      )}
      <ul className="know-list" ref={results}>
        {(found.value ?? []).map((item) => (
          <Row key={`${item.kind} ${item.id}`} href={hrefOf(item)} name={capital(item.name)}>
            <span className="soft">{KINDS[item.kind]}</span>
          </Row>
        ))}
      </ul>
    </form>
  );
}

/** Arrow up and down go from the box through the links of the form and back. */
function useArrowKeys(form: RefObject<HTMLFormElement | null>): void {
  useEffect(() => {
    const own = form.current;
    const step = (event: KeyboardEvent): void => {
      if (event.key !== "ArrowDown" && event.key !== "ArrowUp") return;
      const stops = [...(own?.querySelectorAll<HTMLElement>("input, a") ?? [])];
      const at = stops.findIndex((stop) => stop === document.activeElement);
      const next = stops[at + (event.key === "ArrowDown" ? 1 : -1)];
      if (next === undefined) return;
      event.preventDefault();
      next.focus();
    };
    own?.addEventListener("keydown", step);
    return () => own?.removeEventListener("keydown", step);
  }, [form]);
}
