/** Word between the tabs of this browser, and within one, that what is kept of a case has changed. */

const channel =
  typeof BroadcastChannel === "undefined" ? undefined : new BroadcastChannel("cornerwise-cases");
const listeners = new Set<(caseId: string) => void>();

const tell = (caseId: string): void => {
  for (const listener of listeners) listener(caseId);
};

channel?.addEventListener("message", (event: MessageEvent<unknown>) => {
  if (typeof event.data === "string") tell(event.data);
});

/** Says that something of that case has changed, here and in the other tabs. */
export function caseChanged(caseId: string): void {
  tell(caseId);
  channel?.postMessage(caseId);
}

/** Calls back with the id of each case that changes; gives the way to stop it. */
export function onCaseChange(listener: (caseId: string) => void): () => void {
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
}
