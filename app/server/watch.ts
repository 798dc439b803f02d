import { caseVersions, type Store } from "../../lib/store/index.ts";

/** How often the database is asked for versions while somebody listens, in milliseconds: well within the second promised. */
const EVERY_MS = 400;

/** The version that a case has now, that it was removed, or that there will be no more news. */
export type News = number | "removed" | "over";
export type Listener = (news: News) => void;

interface Watched {
  news: News;
  readonly listeners: Set<Listener>;
}

/**
 * Tells listeners when a case grows, whichever instance it grew on: one question to the database for all cases that
 * anybody here listens to.
 */
export class Watch {
  readonly #store: Store;
  readonly #cases = new Map<string, Watched>();
  #timer: ReturnType<typeof setInterval> | undefined;
  #asking = false;
  #ended = false;

  constructor(store: Store) {
    this.#store = store;
  }

  /** How many listen here. */
  get size(): number {
    return [...this.#cases.values()].reduce((sum, { listeners }) => sum + listeners.size, 0);
  }

  /** Listens to a case whose version is known; returns how to stop. */
  listen(caseId: string, version: number, listener: Listener): () => void {
    const watched = this.#cases.get(caseId) ?? { news: version, listeners: new Set() };
    watched.listeners.add(listener);
    this.#cases.set(caseId, watched);
    // Somebody who came earlier may know less or more than this one.
    if (watched.news !== version) listener(watched.news);
    this.#timer ??= setInterval(() => void this.#look(), EVERY_MS).unref();
    return () => {
      watched.listeners.delete(listener);
      if (watched.listeners.size === 0 && this.#cases.get(caseId) === watched) this.#cases.delete(caseId);
      if (this.#cases.size === 0) this.#stop();
    };
  }

  /** A case grew here: whoever listens here need not wait for the next look. */
  grew(caseId: string, version: number): void {
    this.#tell(caseId, version);
  }

  /** A case was removed here. */
  removed(caseId: string): void {
    this.#tell(caseId, "removed");
  }

  /** Lets go of everybody. */
  end(): void {
    this.#ended = true;
    for (const caseId of this.#cases.keys()) this.#tell(caseId, "over");
    this.#cases.clear();
    this.#stop();
  }

  #stop(): void {
    clearInterval(this.#timer);
    this.#timer = undefined;
  }

  async #look(): Promise<void> {
    // A database that is slow to answer is not asked again before it did.
    if (this.#asking || this.#ended) return;
    this.#asking = true;
    const asked = [...this.#cases.keys()];
    try {
      const versions = await caseVersions(this.#store, asked);
      for (const caseId of asked) this.#tell(caseId, versions.get(caseId) ?? "removed");
    } catch {
      // It may answer the next time; whoever listens asks for entries meanwhile and is told what is wrong.
    } finally {
      this.#asking = false;
    }
  }

  #tell(caseId: string, news: News): void {
    const watched = this.#cases.get(caseId);
    if (watched === undefined || watched.news === news) return;
    // A look that began before an entry was added here comes late.
    if (typeof news === "number" && typeof watched.news === "number" && news < watched.news) return;
    watched.news = news;
    for (const listener of watched.listeners) listener(news);
  }
}
