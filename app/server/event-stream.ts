import { ApiProblem } from "./problem.ts";
import type { News, Watch } from "./watch.ts";

/** Comments keep a silent connection open through relays that end those. */
const PING_MS = 15_000;
/** How long a browser waits before it connects again. */
const RETRY_MS = 2000;
const MOST_LISTENERS = 2000;

interface Followed {
  readonly watch: Watch;
  readonly caseId: string;
  readonly version: number;
  /** Ends the stream: the one who listened is gone. */
  readonly signal: AbortSignal;
  /** Throws when the asker may not see the case any more. */
  readonly stillMay: () => Promise<void>;
}

/**
 * News of one case as server-sent events: `version` with the number as data, `removed`.
 *
 * Source  WHATWG HTML, 9.2: text/event-stream.
 * Errors  ApiProblem busy.
 */
export function eventStream({ watch, caseId, version, signal, stillMay }: Followed): Response {
  if (watch.size >= MOST_LISTENERS) {
    throw new ApiProblem(
      "busy",
      "Too many are listening to cases. Ask for the entries now and then instead.",
      {
        headers: { "retry-after": "30" },
      },
    );
  }
  const encoder = new TextEncoder();
  let letGo = (): void => undefined;
  const stream = new ReadableStream<Uint8Array>({
    start(controller) {
      let over = false;
      let stop = (): void => undefined;
      const send = (text: string): void => {
        if (!over) controller.enqueue(encoder.encode(text));
      };
      const end = (): void => {
        if (over) return;
        letGo();
        controller.close();
      };
      const ping = setInterval(() => {
        stillMay().then(() => {
          send(": still here\n\n");
        }, end);
      }, PING_MS).unref();
      letGo = () => {
        over = true;
        clearInterval(ping);
        signal.removeEventListener("abort", end);
        stop();
      };
      const tell = (news: News): void => {
        if (typeof news === "number") send(`event: version\nid: ${news}\ndata: ${news}\n\n`);
        else {
          if (news === "removed") send("event: removed\ndata:\n\n");
          end();
        }
      };
      signal.addEventListener("abort", end);
      send(`retry: ${RETRY_MS}\n\n`);
      tell(version);
      stop = watch.listen(caseId, version, tell);
      // It may have ended within that call, when there was nothing to stop yet.
      if (over) stop();
      if (signal.aborted) end();
    },
    cancel() {
      letGo();
    },
  });
  return new Response(stream, {
    headers: {
      "content-type": "text/event-stream",
      // Also keeps the framework and relays from gathering events before they pass them on.
      "cache-control": "no-cache, no-transform",
      "x-accel-buffering": "no",
    },
  });
}
