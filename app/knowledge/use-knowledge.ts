"use client";
import { useEffect, useState } from "react";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { messageOf } from "../text/message-of.ts";

let text: Promise<string> | undefined;
let parsed: Promise<Knowledge> | undefined;

/** The knowledge file as text, fetched once a visit; a failed try is not kept. */
export function knowledgeText(): Promise<string> {
  text ??= fetch("/knowledge.json")
    .then((response) => {
      if (!response.ok) throw new Error(`The knowledge could not be fetched (${response.status}).`);
      return response.text();
    })
    .catch((error: unknown) => {
      text = undefined;
      throw error;
    });
  return text;
}

function knowledge(): Promise<Knowledge> {
  parsed ??= knowledgeText()
    .then((json) => JSON.parse(json) as Knowledge)
    .catch((error: unknown) => {
      parsed = undefined;
      throw error;
    });
  return parsed;
}

export type Loaded<T> =
  | { readonly is: "loading" }
  | { readonly is: "ready"; readonly value: T }
  | { readonly is: "failed"; readonly message: string };

/** The knowledge for a screen. */
export function useKnowledge(): Loaded<Knowledge> {
  const [state, setState] = useState<Loaded<Knowledge>>({ is: "loading" });
  useEffect(() => {
    let gone = false;
    knowledge().then(
      (value) => !gone && setState({ is: "ready", value }),
      (error: unknown) => !gone && setState({ is: "failed", message: messageOf(error) }),
    );
    return () => {
      gone = true;
    };
  }, []);
  return state;
}
