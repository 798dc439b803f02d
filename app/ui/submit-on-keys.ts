import type { KeyboardEvent } from "react";

/** Ctrl (or Cmd) and Enter: does the main thing where Enter alone means something else. */
export function isMainKey(event: KeyboardEvent): boolean {
  return event.key === "Enter" && (event.ctrlKey || event.metaKey) && !event.repeat;
}

/** Ctrl and Enter send the form of a box of several lines, where Enter alone breaks the line. */
export function submitOnKeys(event: KeyboardEvent<HTMLTextAreaElement>): void {
  if (!isMainKey(event)) return;
  event.preventDefault();
  event.currentTarget.form?.requestSubmit();
}
