"use client";
import { useState } from "react";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Leader, Ranked, Row, Situation } from "../../engine/protocol.ts";
import { provenWords, chanceWords, percent } from "../../text/chance-words.ts";
import { capital, nameOfSuspect } from "../../text/names.ts";
import { partHref } from "../../text/page-links.ts";
import { Fold } from "../fold.tsx";
import { AboutLink } from "./about-link.tsx";
import { ChanceBar } from "./chance-bar.tsx";
import { WhyPanel } from "./why-panel.tsx";

const FIRST = 6;
const MOST = 40;
const SMALLEST = 0.005;

/** The member of a line that is open. */
function memberOf(row: Row, open: string | undefined): Leader | undefined {
  return row.members.find((m) => m.id === open);
}

/** Suspects by length and words, the share that this knowledge does not hold, and combinations. */
export function Ranking({
  knowledge,
  ranked,
  situation,
  open,
  onOpen,
}: {
  readonly knowledge: Knowledge;
  readonly ranked: Ranked;
  readonly situation: Situation;
  readonly open: string | undefined;
  readonly onOpen: (suspect: string | undefined) => void;
}) {
  const [all, setAll] = useState(false);
  const listed = ranked.rows.filter((r) => r.explains >= SMALLEST).slice(0, MOST);
  const openIsLate = listed.findIndex((r) => memberOf(r, open) !== undefined) >= FIRST;
  const shown = all || openIsLate ? listed : listed.slice(0, FIRST);
  const together = ranked.sets.filter((s) => s.suspects.length > 1 && s.probability >= 0.01).slice(0, 6);
  return (
    <>
      <ol className="ranking">
        {shown.map((row, index) => {
          const member = memberOf(row, open);
          return (
            <li key={row.id} id={`suspect-${row.members[0]?.id}`}>
              {row.members.slice(1).map((m) => (
                <span key={m.id} id={`suspect-${m.id}`} />
              ))}
              <button
                type="button"
                className="suspect"
                aria-expanded={member !== undefined}
                onClick={() => onOpen(member === undefined ? row.members[0]?.id : undefined)}
              >
                <span className="rank number" aria-hidden="true">
                  {index + 1}
                </span>
                <span className="suspect-name">
                  {capital(row.name)}
                  {row.proven && <strong className="proven"> proven by hand</strong>}
                </span>
                <span className="chance number">
                  {chanceWords(row.explains)} <span className="soft">({percent(row.explains)})</span>
                </span>
                <ChanceBar chance={row.explains} look="solid" />
                {row.presentBounds && <span className="small soft">{provenWords(row.presentBounds)}</span>}
                <span className="hidden">Why?</span>
              </button>
              <AboutLink
                from={`suspect-${row.members[0]?.id}`}
                href={partHref(row.members[0]?.part ?? "", row.members[0]?.fault)}
                label={`About the part: ${row.name}`}
              >
                About
              </AboutLink>
              {member !== undefined && row.members.length > 1 && (
                <p className="small soft">
                  Nothing tells its places apart yet. What follows is for one of them, {member.name}; the
                  others stand alike.
                </p>
              )}
              {member !== undefined && (
                <WhyPanel knowledge={knowledge} suspect={member} situation={situation} />
              )}
            </li>
          );
        })}
      </ol>
      {listed.length > FIRST && !openIsLate && (
        <button type="button" className="plain" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? "Show fewer" : `Show ${listed.length - FIRST} more`}
        </button>
      )}
      {ranked.target !== "none" && (
        <dl className="rest-bars">
          <div>
            <dt>Not in this knowledge</dt>
            <dd className="number">
              {chanceWords(ranked.notInKnowledge)}{" "}
              <span className="soft">({percent(ranked.notInKnowledge)})</span>
            </dd>
            <ChanceBar chance={ranked.notInKnowledge} look="hatched" />
          </div>
          {ranked.otherCombinations >= SMALLEST && (
            <div>
              <dt>Other combinations of faults</dt>
              <dd className="number">
                {chanceWords(ranked.otherCombinations)}{" "}
                <span className="soft">({percent(ranked.otherCombinations)})</span>
              </dd>
              <ChanceBar chance={ranked.otherCombinations} look="dotted" />
            </div>
          )}
        </dl>
      )}
      {together.length > 0 && (
        <Fold title="Several faults at once">
          <ul className="plain-list">
            {together.map((set) => (
              <li key={set.suspects.join()} className="together">
                {set.suspects.map((id) => capital(nameOfSuspect(knowledge, id))).join(" + ")}{" "}
                <span className="number soft">{percent(set.probability)}</span>
              </li>
            ))}
          </ul>
        </Fold>
      )}
      {ranked.approximate && (
        <p className="notice small">
          These chances are estimates: the case is too tangled to work out exactly. What is certain stands
          under each.
        </p>
      )}
      {ranked.problems.map((problem) => (
        <p className="notice" key={`${problem.code} ${problem.finding}`}>
          {problem.message}
        </p>
      ))}
    </>
  );
}
