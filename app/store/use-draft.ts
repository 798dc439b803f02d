"use client";
import { useCallback, useEffect, useRef, useState } from "react";
import { readDraft, writeDraft } from "./case-database.ts";

/**
 * Text that survives the closing of the tab while it is being typed.
 *
 * Every change is written at once; a browser finishes a started write when the tab goes.
 */
export function useDraft(key: string): readonly [string, (text: string) => void, boolean] {
  const [state, setState] = useState({ key, text: "", loaded: false });
  const typed = useRef(false);
  useEffect(() => {
    let gone = false;
    typed.current = false;
    const ready = (text: string): void => {
      if (!gone && !typed.current) setState({ key, text, loaded: true });
    };
    readDraft(key).then(ready, () => ready(""));
    return () => {
      gone = true;
    };
  }, [key]);
  const change = useCallback(
    (text: string) => {
      typed.current = true;
      setState({ key, text, loaded: true });
      writeDraft(key, text).catch(() => undefined); // the text stays on the screen; saving an entry reports trouble
    },
    [key],
  );
  const own = state.key === key;
  return [own ? state.text : "", change, own && state.loaded];
}
