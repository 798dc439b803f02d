import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";

/** Folders of the build whose files have another name after every change. */
const HASHED = /static\/(chunks|offline|inline)\//g;
const OTHER = /static\/second-(chunks|offline|inline)\//g;

/** A server in front of the app under test that gives out a second build of it on demand. */
export interface TwoVersions {
  readonly url: string;
  /** From now on the second build, and nothing of the first: all its hashed files have other addresses. */
  readonly release: () => void;
  readonly close: () => Promise<void>;
}

/** Starts it in front of the app at `origin`. */
export async function serveTwoVersions(origin: string): Promise<TwoVersions> {
  let second = false;
  const server = createServer((request, response) => {
    const asked = request.url ?? "/";
    // Pages and files only: what is kept on a server is another matter.
    if (asked.startsWith("/api/") || (second && asked.search(HASHED) >= 0)) {
      response.writeHead(404).end();
      return;
    }
    const headers: Record<string, string> = { "accept-encoding": "identity" };
    for (const [name, value] of Object.entries(request.headers)) {
      if (/^(rsc|next-|accept$)/.test(name) && typeof value === "string") headers[name] = value;
    }
    void fetch(`${origin}${asked.replace(OTHER, "static/$1/")}`, { headers, redirect: "manual" }).then(
      async (found) => {
        const kept = [...found.headers].filter(
          ([name]) => !/^(content-length|connection|keep-alive)$/.test(name),
        );
        const type = found.headers.get("content-type") ?? "";
        const bytes = Buffer.from(await found.arrayBuffer());
        const isText = /html|javascript|x-component|octet-stream|css/.test(type);
        const body = second && isText ? bytes.toString("utf8").replace(HASHED, "static/second-$1/") : bytes;
        response.writeHead(found.status, Object.fromEntries(kept)).end(body);
      },
      () => response.writeHead(502).end(),
    );
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}`,
    release: () => {
      second = true;
    },
    close: () => closed(server),
  };
}

async function closed(server: Server): Promise<void> {
  server.closeAllConnections();
  await new Promise<void>((resolve) => server.close(() => resolve()));
}
