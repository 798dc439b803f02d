"use client";
import type { CompiledFault, Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Leader, Situation } from "../../engine/protocol.ts";
import { useAnswer } from "../../engine/use-answer.ts";
import { weightWords } from "../../../lib/engine/doubt/sentences.ts";
import { chanceWords, percent } from "../../text/chance-words.ts";
import { capital, levelWords, nameOfFinding } from "../../text/names.ts";
import { ANSWERED } from "../../text/state-words.ts";
import { partHref } from "../../text/page-links.ts";
import { AboutLink } from "./about-link.tsx";

/** Why a suspect stands where it does, how it is proven, how grave it is. */
export function WhyPanel({
  knowledge,
  suspect,
  situation,
}: {
  readonly knowledge: Knowledge;
  readonly suspect: Leader;
  readonly situation: Situation;
}) {
  const why = useAnswer(
    "why",
    { ...situation, suspect: suspect.id },
    JSON.stringify([suspect.id, situation]),
  );
  const fault = knowledge.faults.find((f) => f.id === suspect.fault);
  const weights = why.value?.answers ?? [];
  const most = Math.max(1, ...weights.map((w) => Math.abs(w.logOdds)));
  return (
    <div className="why">
      <h3>Why it stands here</h3>
      {why.failed !== undefined && <p className="trouble">{why.failed}</p>}
      {why.value === undefined && why.failed === undefined && <p className="soft">Working it out ...</p>}
      {why.value !== undefined && (
        <>
          <p>
            Before anything was told: {chanceWords(why.value.prior)} ({percent(why.value.prior)}) of such cars
            have it. Now: {chanceWords(why.value.present)} ({percent(why.value.present)}) that it is there
            {suspect.explains < why.value.present - 0.02 &&
              `, ${chanceWords(suspect.explains)} that it is behind the complaint`}
            .
          </p>
          {weights.length > 1 && (
            <p className="small soft">
              What answers say together is shared between them: the lines add up to the way from before to
              now.
            </p>
          )}
          {weights.length === 0 && <p className="soft">No answer speaks for or against it yet.</p>}
          <ul className="plain-list">
            {weights.map((weight) => (
              <li key={weight.finding} className="weight">
                <span>
                  {capital(nameOfFinding(knowledge, weight.finding))}:{" "}
                  <strong>{ANSWERED[weight.state]}</strong>
                </span>
                <span className="small soft">{weightWords(weight.logOdds)}</span>
                <span className="weight-bar" aria-hidden="true">
                  <span
                    className={weight.logOdds >= 0 ? "for" : "against"}
                    style={{ width: `${((Math.abs(weight.logOdds) / most) * 50).toFixed(1)}%` }}
                  />
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
      {fault !== undefined && <HowProven knowledge={knowledge} fault={fault} place={suspect.place} />}
    </div>
  );
}

function HowProven({
  knowledge,
  fault,
  place,
}: {
  readonly knowledge: Knowledge;
  readonly fault: CompiledFault;
  readonly place: string;
}) {
  return (
    <>
      <h3>How it is proven</h3>
      {fault.decisive.length === 0 ? (
        <p>No single finding proves it; it is found by ruling out the others.</p>
      ) : (
        <ul>
          {fault.decisive.map(({ observation: id, level }) => {
            const observation = knowledge.observations.find((o) => o.id === id);
            const grade = observation?.levels[level];
            const checks = knowledge.checks.filter((c) => c.settles.includes(id));
            return (
              <li key={id}>
                {capital(
                  nameOfFinding(knowledge, observation?.places.includes(place) ? `${id}@${place}` : id),
                )}
                {grade !== undefined && grade !== "present" && <> - {levelWords(grade)}</>}
                {checks.length > 0 && (
                  <span className="soft">; found by: {checks.map((c) => c.name).join("; ")}</span>
                )}
              </li>
            );
          })}
        </ul>
      )}
      <p>
        <AboutLink from={`suspect-${fault.id}@${place}`} href={partHref(fault.part, fault.id)}>
          About this part
        </AboutLink>
      </p>
      <h3>How grave it is</h3>
      <p>
        <strong>{capital(fault.severity.word)}</strong>: {fault.severity.reason}
      </p>
    </>
  );
}
