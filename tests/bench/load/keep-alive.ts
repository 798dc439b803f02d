import { Agent, request } from "node:http";

/** What came back, and how long the last byte took. */
export interface Answer {
  readonly status: number;
  readonly body: string;
  readonly cookies: readonly string[];
  readonly ms: number;
}

export interface Sent {
  readonly method?: string;
  readonly cookie?: string;
  /** Sent as JSON. */
  readonly json?: unknown;
}

/** One screen's connection to a server: kept open, one request at a time. */
export class Connection {
  readonly #origin: string;
  readonly #agent = new Agent({ keepAlive: true, maxSockets: 1 });

  constructor(origin: string) {
    this.#origin = origin;
  }

  #headers(sent: Sent, length: number | undefined): Record<string, string | number> {
    return {
      origin: this.#origin,
      ...(sent.cookie !== undefined && { cookie: sent.cookie }),
      ...(length !== undefined && { "content-type": "application/json", "content-length": length }),
    };
  }

  /** Sends a request and reads the whole answer. */
  ask(path: string, sent: Sent = {}): Promise<Answer> {
    const body = sent.json === undefined ? undefined : Buffer.from(JSON.stringify(sent.json));
    const start = performance.now();
    return new Promise((resolve, reject) => {
      const asked = request(
        `${this.#origin}${path}`,
        {
          agent: this.#agent,
          method: sent.method ?? "GET",
          headers: this.#headers(sent, body?.byteLength),
        },
        (response) => {
          const chunks: Buffer[] = [];
          response.on("data", (chunk: Buffer) => chunks.push(chunk));
          response.on("error", reject);
          response.on("end", () => {
            resolve({
              status: response.statusCode ?? 0,
              body: Buffer.concat(chunks).toString(),
              cookies: response.headers["set-cookie"] ?? [],
              ms: performance.now() - start,
            });
          });
        },
      );
      asked.on("error", (error: NodeJS.ErrnoException) => {
        // The server let an idle connection go in the moment in which it was used again: browsers send again, too.
        // Source  Node, http: request.reusedSocket. An entry may be sent twice.
        if (asked.reusedSocket && error.code === "ECONNRESET") resolve(this.ask(path, sent));
        else reject(error);
      });
      asked.end(body);
    });
  }

  /** Follows server-sent events on a connection of its own; gives how to stop. */
  follow(
    path: string,
    sent: Sent,
    heard: (data: string) => void,
    failed: (error: Error) => void,
  ): () => void {
    let over = false;
    const fail = (error: Error): void => {
      if (!over) failed(error);
    };
    const asked = request(
      `${this.#origin}${path}`,
      { agent: false, headers: this.#headers(sent, undefined) },
      (response) => {
        if (response.statusCode !== 200) fail(new Error(`following gave ${response.statusCode}`));
        response.setEncoding("utf8");
        response.on("data", (text: string) => {
          for (const [, data] of text.matchAll(/^data: ?(.*)$/gm)) heard(data ?? "");
        });
        response.on("error", fail);
      },
    );
    asked.on("error", fail);
    asked.end();
    return () => {
      over = true;
      asked.destroy();
    };
  }

  close(): void {
    this.#agent.destroy();
  }
}
