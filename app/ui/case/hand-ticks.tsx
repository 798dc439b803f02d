"use client";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { CompiledFeature, Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { capital } from "../../text/names.ts";
import { Fold } from "../fold.tsx";
import { YesNo, type YesNoState } from "../yes-no.tsx";

const KIND_TITLES: Readonly<Record<CompiledFeature["kind"], string>> = {
  sound: "What it sounds like",
  moment: "When it comes",
  speed: "At what speed",
  felt: "Where it is felt",
  where: "Where it seems to come from",
  direction: "Which way",
  pattern: "What the wear looks like",
  course: "How it came and goes",
};

/** What was answered, and told in words, so far. */
interface Said {
  readonly answers: readonly Pick<CaseState["answers"][number], "finding" | "state">[];
  readonly text: readonly string[];
}

interface Props {
  readonly knowledge: Knowledge;
  readonly state: Said;
  readonly onAnswer: (finding: string, state: YesNoState) => void;
}

function answerTo(state: Said, finding: string, bare?: string): YesNoState {
  const found =
    state.answers.find((a) => a.finding === finding) ?? state.answers.find((a) => a.finding === bare);
  return found?.state ?? "unknown";
}

/** Complaints, their features and what happened lately, to be ticked by hand. */
export function HandTicks({ knowledge, state, onAnswer }: Props) {
  const present = knowledge.complaints.filter((c) => answerTo(state, c.id) === "present");
  return (
    <>
      <Fold
        openAtFirst={present.length === 0 && state.text.length === 0}
        title={<>What is wrong ({present.length === 0 ? "nothing ticked yet" : "change"})</>}
      >
        {knowledge.complaints.map((complaint) => (
          <YesNo
            key={complaint.id}
            name={capital(complaint.name)}
            state={answerTo(state, complaint.id)}
            onChange={(answer) => onAnswer(complaint.id, answer)}
          />
        ))}
      </Fold>
      {present.map((complaint) => (
        <FeatureTicks
          key={complaint.id}
          complaint={complaint.id}
          title={complaint.name}
          knowledge={knowledge}
          state={state}
          onAnswer={onAnswer}
        />
      ))}
      <Fold title="What happened to the car lately">
        {knowledge.contexts.map((context) => (
          <YesNo
            key={context.id}
            name={capital(context.name)}
            state={answerTo(state, context.id)}
            onChange={(answer) => onAnswer(context.id, answer)}
          />
        ))}
      </Fold>
    </>
  );
}

function FeatureTicks({
  complaint,
  title,
  knowledge,
  state,
  onAnswer,
}: Props & { readonly complaint: string; readonly title: string }) {
  const features = knowledge.features.filter((f) => f.complaints.includes(complaint));
  const kinds = (Object.keys(KIND_TITLES) as CompiledFeature["kind"][]).filter((kind) =>
    features.some((f) => f.kind === kind),
  );
  return (
    <Fold className="feature-ticks" title={<>More about the complaint: {title}</>}>
      {kinds.map((kind) => {
        const own = features.filter((f) => f.kind === kind);
        const said = own.filter((f) => answerTo(state, `${complaint}:${f.id}`, f.id) !== "unknown").length;
        return (
          <Fold
            key={kind}
            className="inner"
            title={
              <>
                {KIND_TITLES[kind]}
                {said > 0 && <span className="soft"> ({said} answered)</span>}
              </>
            }
          >
            {own.map((feature) => (
              <YesNo
                key={feature.id}
                name={capital(feature.name)}
                state={answerTo(state, `${complaint}:${feature.id}`, feature.id)}
                onChange={(answer) => onAnswer(`${complaint}:${feature.id}`, answer)}
              />
            ))}
          </Fold>
        );
      })}
    </Fold>
  );
}
