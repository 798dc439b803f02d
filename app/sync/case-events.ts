/** How often a case on the screen is asked for when the server cannot tell by itself. */
const POLL_MS = 5_000;

/** How long until the server is asked again to tell by itself. */
const AGAIN_MS = 60_000;

/**
 * Hears of every change of a case while its page can be seen.
 *
 * `onNews` is called with the newest number, or with undefined when it may have changed; `onBack` when the server was
 * away in between. Gives the way to stop.
 * Nothing is held open for a page that is hidden: a browser allows a host few connections.
 */
export function listenToCase(
  caseId: string,
  onNews: (version: number | undefined) => void,
  onBack: () => void,
): () => void {
  let source: EventSource | undefined;
  let polling: ReturnType<typeof setInterval> | undefined;
  let again: ReturnType<typeof setTimeout> | undefined;

  const stop = (): void => {
    source?.close();
    source = undefined;
    clearInterval(polling);
    clearTimeout(again);
  };
  const start = (): void => {
    stop();
    if (document.visibilityState !== "visible") return;
    source = new EventSource(`/api/v1/cases/${encodeURIComponent(caseId)}/events`);
    let lines = 0;
    source.addEventListener("open", () => {
      onNews(undefined);
      if (lines++ > 0) onBack();
    });
    source.addEventListener("version", (event: MessageEvent<string>) => onNews(versionOf(event.data)));
    source.addEventListener("removed", () => onNews(undefined));
    source.addEventListener("error", () => {
      // While it only lost the line the browser tries again by itself; shut, it has been turned away.
      if (source?.readyState !== EventSource.CLOSED) return;
      stop();
      polling = setInterval(() => onNews(undefined), POLL_MS);
      again = setTimeout(start, AGAIN_MS);
    });
  };
  start();
  document.addEventListener("visibilitychange", start);
  return () => {
    document.removeEventListener("visibilitychange", start);
    stop();
  };
}

function versionOf(data: string): number | undefined {
  try {
    const { version } = JSON.parse(data) as { version?: unknown };
    return typeof version === "number" ? version : undefined;
  } catch {
    return undefined;
  }
}
