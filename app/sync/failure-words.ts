import type { Reply } from "./door.ts";

/** What to tell a person whose request did not go through. */
export function failureWords(reply: Reply): string {
  if (reply.is === "lost") return "The workshop's server does not answer. Try again when it does.";
  const { status, problem } = reply;
  if (problem === undefined) return "There is no workshop server behind this page.";
  const wait = reply.retryAfterMs === undefined ? "" : ` Wait ${waitWords(reply.retryAfterMs)}.`;
  switch (status) {
    case 401:
      return problem.detail ?? "Sign in first.";
    case 403:
      return problem.detail ?? "This account may not do that.";
    case 404:
      return "The server has no such thing, or does not show it to this account.";
    case 412:
      return "Somebody else changed it meanwhile. Look again, then decide.";
    case 429:
      return `Too many tries.${wait === "" ? " Wait a while." : wait}`;
    default:
      return `${problem.detail ?? problem.title}${wait}`;
  }
}

function waitWords(ms: number): string {
  const seconds = Math.ceil(ms / 1000);
  return seconds < 90 ? `${seconds} s` : `${Math.ceil(seconds / 60)} minutes`;
}

/** What is wrong with each field of a form, by its name; empty when the server named none. */
export function fieldProblems(reply: Reply): Readonly<Record<string, string>> {
  if (reply.is === "lost") return {};
  return Object.fromEntries((reply.problem?.fields ?? []).map(({ path, message }) => [path, message]));
}
