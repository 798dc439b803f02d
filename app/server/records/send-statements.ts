import { setTimeout as pause } from "node:timers/promises";
import { z } from "zod";
import { type Statement, XAPI_VERSION } from "../../../lib/training/index.ts";
import type { RecordStore } from "../config.ts";

/** What became of statements. Sending the same again is harmless: each goes by its own id. */
export interface Sent {
  /** Taken now, or as they were taken before. */
  readonly taken: number;
  /** Something else is kept there under their ids; they were left as they are. */
  readonly differing: number;
  readonly refused: readonly { readonly id: string; readonly why: string }[];
  /** Why the rest was not sent, in words. */
  readonly trouble: string | undefined;
}

export interface Patience {
  /** For one request, and for all of them. Units: ms. */
  readonly requestMs: number;
  readonly allMs: number;
  /** Before the second and the third try. Units: ms. */
  readonly pausesMs: readonly number[];
}

/** A browser that waits for all of it gives up after 20 s. */
const PATIENCE: Patience = { requestMs: 5000, allMs: 15_000, pausesMs: [300, 1500] };
const BATCH = 50;

type Outcome =
  | { readonly is: "taken" }
  | { readonly is: "conflict" }
  | { readonly is: "refused"; readonly why: string }
  | { readonly is: "busy" | "stop"; readonly why: string; readonly afterMs?: number };

/**
 * Sends statements to a record store in batches; one that is refused or differs is found by halving its batch.
 *
 * Source  IEEE 9274.1.1-2023, statement resource: a batch is taken whole or not at all; a reply gives the ids that were taken.
 */
export async function sendStatements(
  to: RecordStore,
  statements: readonly Statement[],
  patience = PATIENCE,
): Promise<Sent> {
  const until = performance.now() + patience.allMs;
  const refused: { id: string; why: string }[] = [];
  let taken = 0;
  let differing = 0;
  const batches: (readonly Statement[])[] = [];
  for (let k = 0; k < statements.length; k += BATCH) batches.push(statements.slice(k, k + BATCH));
  for (let batch = batches.shift(); batch !== undefined; batch = batches.shift()) {
    const outcome = await sendPatiently(to, batch, patience, until);
    const [only] = batch;
    if (outcome.is === "taken") taken += batch.length;
    else if (outcome.is === "stop" || outcome.is === "busy")
      return { taken, differing, refused, trouble: outcome.why };
    else if (batch.length > 1) {
      const half = Math.ceil(batch.length / 2);
      batches.unshift(batch.slice(0, half), batch.slice(half));
    } else if (outcome.is === "conflict") differing += 1;
    else if (only !== undefined) refused.push({ id: only.id, why: outcome.why });
  }
  return { taken, differing, refused, trouble: undefined };
}

async function sendPatiently(
  to: RecordStore,
  batch: readonly Statement[],
  { requestMs, pausesMs }: Patience,
  until: number,
): Promise<Outcome> {
  for (let tries = 0; ; tries += 1) {
    const left = until - performance.now();
    if (left <= 0) return { is: "stop", why: "The record store is slow; not all was sent. Send again." };
    const outcome = await sendOnce(to, batch, Math.min(requestMs, left));
    const pauseMs = pausesMs[tries];
    if (outcome.is !== "busy" || pauseMs === undefined) return outcome;
    const wait = Math.max(pauseMs, outcome.afterMs ?? 0);
    if (performance.now() + wait > until) return outcome;
    await pause(wait);
  }
}

async function sendOnce(
  { endpoint, key, secret }: RecordStore,
  batch: readonly Statement[],
  withinMs: number,
): Promise<Outcome> {
  const credentials = Buffer.from(`${key}:${secret}`).toString("base64");
  try {
    const response = await fetch(`${endpoint}/statements`, {
      method: "POST",
      // Statements go where the owner said, and nowhere that a reply may name.
      redirect: "manual",
      signal: AbortSignal.timeout(Math.max(1, Math.ceil(withinMs))),
      headers: {
        "content-type": "application/json",
        "x-experience-api-version": XAPI_VERSION,
        ...(key !== "" && { authorization: `Basic ${credentials}` }),
      },
      body: JSON.stringify(batch),
    });
    return outcomeOf(response, await response.text(), batch);
  } catch (error) {
    const late = error instanceof Error && error.name === "TimeoutError";
    return {
      is: "busy",
      why: late ? "The record store did not answer in time." : "The record store cannot be reached.",
    };
  }
}

const Ids = z.array(z.string());

function outcomeOf({ status, headers }: Response, text: string, batch: readonly Statement[]): Outcome {
  if (status === 200 || status === 204) {
    return status === 204 || tellsOf(text, batch)
      ? { is: "taken" }
      : { is: "stop", why: "What answers at CORNERWISE_XAPI_ENDPOINT is no record store." };
  }
  if (status === 409) return { is: "conflict" };
  if (status === 400 || status === 413) return { is: "refused", why: wordsOf(status, text) };
  if (status === 401 || status === 403) {
    return {
      is: "stop",
      why: `The record store does not take the key and secret of this server (${status}). The owner sets CORNERWISE_XAPI_KEY and CORNERWISE_XAPI_SECRET.`,
    };
  }
  if (status >= 300 && status < 400) {
    return {
      is: "stop",
      why: `The record store sends elsewhere (${status}), which is not followed. The owner sets CORNERWISE_XAPI_ENDPOINT to the address that answers.`,
    };
  }
  const afterMs = secondsOf(headers.get("retry-after"));
  if (status === 429 || status >= 500) {
    return {
      is: "busy",
      why: `The record store could not take it now (${status}). Send again later.`,
      ...(afterMs !== undefined && { afterMs }),
    };
  }
  return {
    is: "stop",
    why: `The record store did not take it (${status}). The owner looks at CORNERWISE_XAPI_ENDPOINT.`,
  };
}

/** The reply gives the ids of what was taken: a page that says 200 to everything does not. */
function tellsOf(text: string, batch: readonly Statement[]): boolean {
  try {
    const ids = new Set(Ids.parse(JSON.parse(text)).map((id) => id.toLowerCase()));
    return batch.every(({ id }) => ids.has(id));
  } catch {
    return false;
  }
}

/** Words of the other side, short and without what a screen cannot show. */
function wordsOf(status: number, text: string): string {
  const plain = text
    .replaceAll(/[^\p{L}\p{N}\p{P}\p{Zs}]/gu, " ")
    .trim()
    .slice(0, 200);
  return plain === "" ? `refused (${status})` : `refused (${status}): ${plain}`;
}

function secondsOf(header: string | null): number | undefined {
  const seconds = header === null ? Number.NaN : Number(header);
  return Number.isFinite(seconds) && seconds >= 0 ? seconds * 1000 : undefined;
}
