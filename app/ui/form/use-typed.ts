"use client";
import { useState } from "react";

function read(key: string): string {
  try {
    return window.localStorage.getItem(key) ?? "";
  } catch {
    // Kept from storing: a private window.
    return "";
  }
}

function write(key: string, text: string): void {
  try {
    if (text === "") window.localStorage.removeItem(key);
    else window.localStorage.setItem(key, text);
  } catch {
    // As above: it stays on the page alone.
  }
}

/** Text that is still there after the page was loaded again; for screens that are made in the browser only. */
export function useTyped(key: string): readonly [string, (text: string) => void] {
  const [text, setText] = useState(() => read(key));
  const change = (next: string): void => {
    setText(next);
    write(key, next);
  };
  return [text, change];
}
