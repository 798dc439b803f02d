"use client";
import { useMemo } from "react";
import { type Grounded, placedChecks } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { minutesWords } from "../../text/amounts.ts";
import { capital, nameOfCheck, nameOfFinding, nameOfPlace } from "../../text/names.ts";
import { Fold } from "../fold.tsx";
import { type Pickable, PickList } from "../teach/pick-list.tsx";
import type { OpenAttempt } from "./use-attempt.ts";

interface Listed extends Pickable {
  readonly minutes: number;
}

/** Every check of this car and every question, to be found by words or by place. */
export function AllChecks({
  knowledge,
  grounded,
  attempt,
  open,
  onPick,
}: {
  readonly knowledge: Knowledge;
  readonly grounded: Grounded;
  readonly attempt: OpenAttempt;
  /** Shown at once: nothing else proposes a check. */
  readonly open: boolean;
  readonly onPick: (id: string) => void;
}) {
  const complaint = attempt.exercise.said.find(
    ({ finding, state }) => state === "present" && knowledge.complaints.some((c) => c.id === finding),
  )?.finding;
  const { checks, questions, places } = useMemo(
    () => listed(knowledge, grounded, complaint),
    [knowledge, grounded, complaint],
  );
  return (
    <Fold title={`All checks and questions (${checks.length + questions.length})`} openAtFirst={open}>
      <PickList label="Look for a check or a question" things={[...checks, ...questions]}>
        {({ id, minutes }) => (
          <button type="button" onClick={() => onPick(id)}>
            Open, {minutesWords(minutes)}
          </button>
        )}
      </PickList>
      {places.map(([place, own]) => (
        <Fold key={place} title={`${capital(nameOfPlace(knowledge, place))} (${own.length})`}>
          <CheckLines lines={own} onPick={onPick} />
        </Fold>
      ))}
      <Fold title={`Questions to the customer (${questions.length})`}>
        <CheckLines lines={questions} onPick={onPick} />
      </Fold>
    </Fold>
  );
}

function CheckLines({
  lines,
  onPick,
}: {
  readonly lines: readonly Listed[];
  readonly onPick: (id: string) => void;
}) {
  return (
    <ul className="plain-list">
      {lines.map(({ id, name, minutes }) => (
        <li key={id}>
          <button type="button" className="line-button" onClick={() => onPick(id)}>
            <span>{name}</span>
            <span className="small soft">{minutesWords(minutes)}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}

function listed(knowledge: Knowledge, grounded: Grounded, complaint: string | undefined) {
  const placed = placedChecks(grounded);
  const checks = placed.map(({ id, check }): Listed => {
    const name = capital(nameOfCheck(knowledge, id));
    return { id, name, words: name.toLowerCase(), minutes: check.minutes };
  });
  const ask = (finding: string, question: string): Listed => ({
    id: `ask:${finding}`,
    name: capital(question),
    words: `${question} ${nameOfFinding(knowledge, finding)}`.toLowerCase(),
    minutes: knowledge.reports.questionMinutes,
  });
  const features = knowledge.features
    .filter((f) => complaint !== undefined && f.complaints.includes(complaint))
    .map((f) => ask(`${complaint}:${f.id}`, f.question));
  const others = knowledge.complaints
    .filter(({ id }) => id !== complaint)
    .map(({ id, question }) => ask(id, question));
  const contexts = knowledge.contexts.map((c) => ask(c.id, c.question));
  const places = new Map<string, Listed[]>();
  placed.forEach(({ place }, k) => {
    const one = checks[k];
    if (one !== undefined) places.set(place, [...(places.get(place) ?? []), one]);
  });
  return { checks, questions: [...features, ...others, ...contexts], places: [...places] };
}
