"use client";
import { createContext, useEffect, useState } from "react";
import { messageOf } from "../text/message-of.ts";
import { type WantedRelease, wantedWords } from "./find-release.ts";
import { type OpenRelease, openReleaseHere } from "./open-release.ts";
import type { ReleaseName } from "./release-index.ts";
import { keepForCase, locateRelease, newestRelease } from "./release-text.ts";

/** The release that the engine is asked with on these screens; the newest where nothing else is said. */
export const ReleaseInUse = createContext<ReleaseName | undefined>(undefined);

export type Loaded<T> =
  | { readonly is: "loading" }
  | { readonly is: "ready"; readonly value: T }
  | { readonly is: "failed"; readonly message: string };

/** The newest knowledge, for a screen that belongs to no case. */
export function useKnowledge(): Loaded<OpenRelease> {
  const [state, setState] = useState<Loaded<OpenRelease>>({ is: "loading" });
  useEffect(() => {
    let gone = false;
    newestRelease()
      .then(openReleaseHere)
      .then(
        (value) => !gone && setState({ is: "ready", value }),
        (error: unknown) => !gone && setState({ is: "failed", message: messageOf(error) }),
      );
    return () => {
      gone = true;
    };
  }, []);
  return state;
}

/** The release that a case is weighed with cannot be had: nothing else is taken in its place unasked. */
export interface MissingRelease {
  readonly is: "missing";
  /** Version of the one that is missing. */
  readonly version: string;
  /** Why, when it is not simply that nobody has it. */
  readonly reason: string | undefined;
  readonly newest: ReleaseName | undefined;
}

/** The knowledge of a case on its way, there, or missing for whatever reason. */
export type ReleaseOfCase = Exclude<Loaded<OpenRelease>, { readonly is: "failed" }> | MissingRelease;

/** The knowledge that a case is weighed with, which this device then keeps; none while it is not known which. */
export function useReleaseOfCase(wanted: WantedRelease | undefined): ReleaseOfCase {
  const [state, setState] = useState<ReleaseOfCase>({ is: "loading" });
  const release = wanted?.release;
  const knowledgeVersion = wanted?.knowledgeVersion;
  useEffect(() => {
    if (release === undefined) return;
    let gone = false;
    void openForCase({ release, knowledgeVersion }).then((opened) => !gone && setState(opened));
    return () => {
      gone = true;
    };
  }, [release, knowledgeVersion]);
  return state;
}

async function openForCase(wanted: WantedRelease): Promise<ReleaseOfCase> {
  const version = wantedWords(wanted);
  const missing = async (reason?: string): Promise<MissingRelease> => ({
    is: "missing",
    version,
    reason,
    newest: await newestRelease().catch(() => undefined),
  });
  try {
    // While the opening has not arrived nothing names a release, and there is nothing to weigh either.
    const name = wanted.release === "" ? await newestRelease() : await locateRelease(wanted);
    if (name === undefined) return await missing();
    const value = await openReleaseHere(name);
    // The case goes on without it; the next visit tries again.
    keepForCase(name).catch(() => undefined);
    return { is: "ready", value };
  } catch (error) {
    return missing(messageOf(error));
  }
}
