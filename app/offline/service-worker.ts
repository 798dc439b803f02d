/// <reference lib="webworker" />
import { type PrecacheEntry, Serwist, type SerwistPlugin } from "serwist";
import { type KeptPages, pageOf, READING_PAGE } from "./kept-pages.ts";

/** Put in by the step after the build: every file that the app needs without a network, and which of them make each page. */
declare const KEPT_FILES: PrecacheEntry[];
declare const KEPT_PAGES: KeptPages;

/** The same answer without an address of its own: it then has that of the request. */
function readdressed(found: Response, headers = new Headers(found.headers)): Response {
  return new Response(found.body, { headers });
}

/**
 * The script of a worker is told what to load by what follows the # of its address: the address under which it is kept would
 * hide that.
 */
const workerScripts: SerwistPlugin = {
  handlerWillRespond: async ({ request, response }) =>
    request.destination === "worker" ? readdressed(response) : response,
};

// No skipWaiting: a newer version waits until the page says so, as an open case stands on files of this one.
const serwist = new Serwist({
  precacheEntries: KEPT_FILES,
  precacheOptions: {
    plugins: [workerScripts],
    // What follows a question mark only sets one build's address apart from another's.
    ignoreURLParametersMatching: [/./],
    cleanURLs: false,
    directoryIndex: null,
  },
  clientsClaim: true,
  skipWaiting: false,
});

/** What the framework fetches of a page when a link is followed, instead of the page itself. */
const isData = (request: Request) => request.headers.get("rsc") === "1";

/** The same ahead of time, for a link that comes into sight. */
const isAhead = (request: Request) =>
  request.headers.has("next-router-prefetch") || request.headers.has("next-router-segment-prefetch");

/** A kept file as the answer to a request for something else. */
async function kept(file: string, type: string): Promise<Response | undefined> {
  const found = await serwist.matchPrecache(file);
  if (found === undefined) return undefined;
  const headers = new Headers(found.headers);
  headers.set("Content-Type", type);
  // Both are of the file as it was sent; it is kept unpacked.
  headers.delete("Content-Encoding");
  headers.delete("Content-Length");
  return readdressed(found, headers);
}

async function answer(request: Request, url: URL): Promise<Response> {
  const page = pageOf(url.pathname, KEPT_PAGES);
  const data = isData(request);
  // Nothing ahead of time: it lies here anyway, and the server's may be of a newer version already.
  if (data && isAhead(request)) return new Response(null, { status: 204 });
  const found =
    page &&
    (await (data ? kept(page.data, "text/x-component") : kept(page.html, "text/html; charset=utf-8")));
  if (found !== undefined) return found;
  try {
    return await fetch(request);
  } catch (error) {
    const elsewhere = KEPT_PAGES[READING_PAGE];
    const told = data ? undefined : elsewhere && (await kept(elsewhere.html, "text/html; charset=utf-8"));
    if (told === undefined) throw error;
    return told;
  }
}

serwist.registerCapture(
  ({ request, url, sameOrigin }) =>
    sameOrigin && !url.pathname.startsWith("/api/") && (request.mode === "navigate" || isData(request)),
  ({ request, url }) => answer(request, url),
);

serwist.addEventListeners();
