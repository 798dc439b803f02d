"use client";
import { useRef, useState, useSyncExternalStore } from "react";
import { newId } from "../../store/new-entry.ts";
import { pagePerson } from "../../store/person-here.ts";
import { Failed } from "../people/failed.tsx";
import { FormField } from "../people/form-field.tsx";
import { PeopleForm } from "../people/people-form.tsx";
import { SheetPart } from "../sheet-part.tsx";
import { TitledSheet } from "../titled-sheet.tsx";
import { askServer } from "./ask-attempt.ts";
import { browserKey } from "./browser-key.ts";
import { MyAttempts } from "./my-attempts.tsx";
import { BegunReply } from "./replies.ts";

const workPage = (id: string): string => `/exercise/work?id=${encodeURIComponent(id)}`;

const hashHere = (): string => window.location.hash.slice(1);
const personName = (): string => pagePerson()?.name ?? "";
const nothing = (): string => "";
const never = () => () => undefined;

function onHash(listener: () => void): () => void {
  window.addEventListener("hashchange", listener);
  return () => window.removeEventListener("hashchange", listener);
}

/** Begins an exercise by its code, or by the link that leads here, and lists what was begun before. */
export function BeginScreen() {
  const token = useSyncExternalStore(onHash, hashHere, nothing);
  const person = useSyncExternalStore(never, personName, nothing);
  const [code, setCode] = useState("");
  const [name, setName] = useState("");
  const [failed, setFailed] = useState<string>();
  const [busy, setBusy] = useState(false);
  // The same until it went through: a lost reply begins no second attempt.
  const id = useRef("");

  const begin = async (): Promise<void> => {
    setBusy(true);
    setFailed(undefined);
    if (id.current === "") id.current = newId();
    const body = {
      id: id.current,
      key: browserKey(),
      ...(token === "" ? { code } : { token: token.slice(0, 100) }),
      ...(person === "" && name.trim() !== "" && { name: name.trim() }),
    };
    const asked = await askServer({ method: "POST", path: "/api/v1/attempts", body }, BegunReply);
    if (asked.is === "ok") {
      window.location.assign(workPage(asked.value.id));
      return;
    }
    setBusy(false);
    setFailed(asked.words);
  };

  return (
    <TitledSheet title="Work an exercise">
      <p>
        An exercise is a case with an invented car. You make the checks on the screen and are told what each
        one finds; at the end you name the fault and say how sure you are. Then you see how it went, step by
        step.
      </p>
      <PeopleForm onSend={() => void begin()}>
        {token === "" ? (
          <FormField
            label="Code of the exercise"
            name="code"
            autoComplete="off"
            hint="Eight letters and digits, from your instructor. Spaces and small letters do not matter."
            value={code}
            most={40}
            onChange={setCode}
          />
        ) : (
          <p className="notice">The link that you opened leads to an exercise.</p>
        )}
        {person === "" ? (
          <FormField
            label="Your name"
            name="name"
            autoComplete="name"
            hint="As your instructor knows you. No account is needed; this browser keeps the way back to your attempt."
            value={name}
            most={80}
            onChange={setName}
          />
        ) : (
          <p>
            You are signed in as <strong>{person}</strong>; the attempt is kept under your account.
          </p>
        )}
        <Failed words={failed} />
        <button type="submit" className="main wide" disabled={busy || (token === "" && code.trim() === "")}>
          {busy ? "Opening ..." : "Begin the exercise"}
        </button>
      </PeopleForm>
      <SheetPart id="mine" title="My attempts">
        <MyAttempts />
      </SheetPart>
    </TitledSheet>
  );
}
