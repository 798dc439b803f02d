"use client";
import Link from "next/link";
import { useSearchParams } from "next/navigation";
import type { OpenRelease } from "../../knowledge/open-release.ts";
import { useReleaseOfCase } from "../../knowledge/use-knowledge.ts";
import { SiteHead } from "../site-head.tsx";
import { AnswerSheet } from "./answer-sheet.tsx";
import { usePreview } from "./preview-part.tsx";
import type { KeptExercise } from "./replies.ts";
import { TeachGate } from "./teach-gate.tsx";
import { useKeptExercise } from "./use-kept-exercise.ts";
import { Worksheet } from "./worksheet.tsx";

/** The exercise that the address names, on paper: for the trainee, or with the answers. */
export function SheetScreen() {
  const asked = useSearchParams();
  const id = asked.get("id") ?? "";
  const answers = asked.get("answers") === "yes";
  const own = `/teach/sheet?id=${encodeURIComponent(id)}`;
  return (
    <>
      <SiteHead />
      <main id="main" className="sheet card-sheet">
        <nav className="row no-print" aria-label="Sheets">
          <Link className="button" href={`/teach/exercise?id=${encodeURIComponent(id)}`}>
            Back to the exercise
          </Link>
          <Link className="button" href={answers ? own : `${own}&answers=yes`} replace>
            {answers ? "Worksheet" : "Answer sheet"}
          </Link>
          <button type="button" className="main" onClick={() => window.print()}>
            Print
          </button>
        </nav>
        <TeachGate>
          <Opened key={id} id={id} answers={answers} />
        </TeachGate>
      </main>
    </>
  );
}

function Opened({ id, answers }: { readonly id: string; readonly answers: boolean }) {
  const [kept] = useKeptExercise(id);
  const exercise = kept.is === "ready" ? kept.value.exercise : undefined;
  const release = useReleaseOfCase(exercise && { release: exercise.release });
  if (kept.is === "failed")
    return (
      <p className="trouble" role="alert">
        {kept.message}
      </p>
    );
  if (release.is === "missing")
    return (
      <p className="trouble" role="alert">
        The knowledge that it is set with is not here. {release.reason}
      </p>
    );
  if (kept.is === "looking" || release.is === "loading") return <p role="status">Setting the sheet ...</p>;
  return answers ? (
    <WithAnswers kept={kept.value} release={release.value} />
  ) : (
    <Worksheet exercise={kept.value.exercise} knowledge={release.value.knowledge} />
  );
}

function WithAnswers({ kept, release }: { readonly kept: KeptExercise; readonly release: OpenRelease }) {
  const { shown, failed } = usePreview(release, kept.exercise);
  if (failed !== undefined)
    return (
      <p className="trouble" role="alert">
        {failed}
      </p>
    );
  if (shown === undefined) return <p role="status">Going the best way ...</p>;
  return <AnswerSheet exercise={kept.exercise} knowledge={release.knowledge} shown={shown} />;
}
