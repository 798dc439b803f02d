"use client";
import { useState } from "react";
import { newId } from "../../store/new-entry.ts";
import { EndPage } from "./end-page.tsx";
import { AskPage } from "./ask-page.tsx";
import { PhotoPage } from "./photo-page.tsx";
import { StartPage } from "./start-page.tsx";
import { StopBox } from "./stop-box.tsx";
import { type Form, type FormStanding, useForm } from "./use-form.ts";
import { useTyped } from "./use-typed.ts";
import { WordsPage } from "./words-page.tsx";

/** The pages of the form, in order. */
export type FormPage = "start" | "words" | "ask" | "photo" | "end";

type OpenView = Extract<FormStanding, { is: "open" }>["view"];

/** What a customer is asked by a link: one thing a page, in large print. */
export function FormScreen() {
  const form = useForm();
  const { standing } = form;
  return (
    <>
      <header className="site-head">
        <span className="brand">Cornerwise</span>
      </header>
      <main id="main" className="sheet list-sheet form-sheet">
        {standing.is === "open" ? (
          <OpenForm form={form} view={standing.view} />
        ) : standing.is === "shut" ? (
          <>
            <h1>{standing.title}</h1>
            <p>{standing.text}</p>
          </>
        ) : (
          <>
            <h1>Questions about your car</h1>
            <p role="status">{form.trouble ?? "Opening the form ..."}</p>
            <Again form={form} />
          </>
        )}
      </main>
    </>
  );
}

/** Where somebody goes on who comes back to the form. */
function pageOf(view: OpenView): FormPage {
  if (view.done) return "end";
  if (view.said.length === 0) return "start";
  return view.question === null ? "photo" : "ask";
}

function OpenForm({ form, view }: { readonly form: Form; readonly view: OpenView }) {
  const [chosen, setPage] = useState<FormPage>(() => pageOf(view));
  const [words, setWords] = useTyped(`${form.key}/words`);
  // Nothing is worth asking any more: the questions are over.
  const page = chosen === "ask" && view.question === null ? "photo" : chosen;

  const last = view.said.at(-1);
  const takeBack = (id: string) => form.send({ method: "DELETE", path: `/api/v1/form/answers/${id}` });
  /** One page back: what was said there is taken back, to be said otherwise. */
  const back = async () => {
    if (page === "words" || last === undefined) setPage(page === "words" ? "start" : "words");
    else if (last.kind === "photo") setPage("photo");
    else if ((await takeBack(last.id)) !== undefined) {
      if (last.kind === "words") setWords(last.text);
      setPage(last.kind === "words" ? "words" : "ask");
    }
  };

  return (
    <>
      {view.advice?.stop === true && page !== "end" && <StopBox advice={view.advice} />}
      {page === "start" && <StartPage view={view} onStart={() => setPage("words")} />}
      {page === "words" && (
        <WordsPage
          words={words}
          onWords={setWords}
          sending={form.sending}
          onSend={async (text) => {
            const sent = await form.send({
              ...{ method: "POST", path: "/api/v1/form/words" },
              body: { id: newId(), text },
            });
            if (sent === undefined) return;
            setWords("");
            setPage("ask");
          }}
          onSkip={() => setPage("ask")}
          onBack={() => void back()}
        />
      )}
      {page === "ask" && view.question !== null && (
        <AskPage
          key={view.question.id}
          question={view.question}
          answered={view.said.filter(({ kind }) => kind === "answer").length}
          most={view.most}
          sending={form.sending}
          onAnswer={(choice) => {
            const question = view.question?.id ?? "";
            const body = { id: newId(), question, choice };
            void form.send({ method: "POST", path: "/api/v1/form/answers", body });
          }}
          onBack={() => void back()}
        />
      )}
      {page === "photo" && (
        <PhotoPage
          view={view}
          form={form}
          onBack={last?.kind === "photo" ? undefined : () => void back()}
          onTakeAway={takeBack}
          onDone={async () => {
            if ((await form.send({ method: "POST", path: "/api/v1/form/done" })) !== undefined)
              setPage("end");
          }}
        />
      )}
      {page === "end" && (
        <EndPage view={view} onMore={() => setPage("photo")} onWords={() => setPage("words")} />
      )}
      <p role="alert" className={form.trouble === undefined ? undefined : "trouble"}>
        {form.trouble}
      </p>
      <Again form={form} />
    </>
  );
}

function Again({ form }: { readonly form: Form }) {
  const { again, sending } = form;
  if (again === undefined && !sending) return null;
  return (
    <p role="status" className="form-again">
      {sending && "Sending ..."}
      {again !== undefined && !sending && (
        <button type="button" className="main" onClick={() => void again()}>
          Send it again
        </button>
      )}
    </p>
  );
}
