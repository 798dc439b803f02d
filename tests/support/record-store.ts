import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { text } from "node:stream/consumers";

/** One request as the record store saw it. */
export interface SeenRequest {
  readonly method: string;
  readonly path: string;
  readonly headers: IncomingMessage["headers"];
  readonly statements: readonly { readonly id: string }[];
}

/** What it answers instead of taking the statements; undefined: it takes them. */
export type Answering = (
  seen: SeenRequest,
  response: ServerResponse,
) => boolean | undefined | Promise<boolean | undefined>;

/** A record store on the loopback address: keeps statements by their ids, as the standard says. */
export interface PlayedStore {
  readonly endpoint: string;
  readonly seen: SeenRequest[];
  /** Statements by id, as text. */
  readonly kept: Map<string, string>;
  /** Set by a test; gives true when it has answered. */
  answering: Answering | undefined;
  close(): Promise<void>;
}

/*
 * Source  IEEE 9274.1.1-2023, statement resource (POST): 200 with the ids of all statements, in their order; 409 when another
 * statement is kept under one of the ids, and then nothing is kept.
 */
export async function playedStore(): Promise<PlayedStore> {
  const seen: SeenRequest[] = [];
  const kept = new Map<string, string>();
  const server = createServer((request, response) => {
    void (async () => {
      const body = await text(request);
      const statements = JSON.parse(body === "" ? "[]" : body) as { id: string }[];
      const { method = "", url: path = "", headers } = request;
      const at: SeenRequest = { method, path, headers, statements };
      seen.push(at);
      if ((await store.answering?.(at, response)) === true) return;
      const differs = statements.some(
        ({ id }, k) => (kept.get(id) ?? textOf(statements[k])) !== textOf(statements[k]),
      );
      if (differs) return void response.writeHead(409).end();
      for (const statement of statements) kept.set(statement.id, textOf(statement));
      response
        .writeHead(200, { "content-type": "application/json" })
        .end(JSON.stringify(statements.map(({ id }) => id)));
    })();
  });
  await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
  const { port } = server.address() as AddressInfo;
  const store: PlayedStore = {
    endpoint: `http://127.0.0.1:${port}/xapi`,
    seen,
    kept,
    answering: undefined,
    close: () =>
      new Promise((closed) => {
        server.close(() => closed());
        server.closeAllConnections();
      }),
  };
  return store;
}

const textOf = (statement: unknown): string => JSON.stringify(statement);
