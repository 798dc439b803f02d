import type { KeyboardEvent } from "react";

/** Ctrl (or Cmd) and Enter send the form of a box of several lines, where Enter alone breaks the line. */
export function submitOnKeys(event: KeyboardEvent<HTMLTextAreaElement>): void {
  if (event.key !== "Enter" || !(event.ctrlKey || event.metaKey)) return;
  event.preventDefault();
  event.currentTarget.form?.requestSubmit();
}
