import { randomUUID } from "node:crypto";
import { setTimeout as sleep } from "node:timers/promises";
import { seededUniform } from "../../support/random-models.ts";
import { Connection, type Answer, type Sent } from "./keep-alive.ts";
import { caseFor, PASSWORD, PEOPLE } from "./kept-databases.ts";
import { madeId, step } from "./made-cases.ts";

/** Times by what was done, in milliseconds, and whatever went wrong. */
export class Tally {
  readonly times = new Map<string, number[]>();
  readonly errors: string[] = [];
  /** What began before this moment is not counted. */
  countFrom = 0;

  took(what: string, ms: number): void {
    if (performance.now() - ms < this.countFrom) return;
    const times = this.times.get(what) ?? [];
    times.push(ms);
    this.times.set(what, times);
  }

  wrong(what: string): void {
    this.errors.push(what);
  }
}

/** Signs everybody in, one after the other; gives their cookies. */
export async function signIn(origin: string): Promise<readonly string[]> {
  const connection = new Connection(origin);
  const cookies: string[] = [];
  for (const { email } of PEOPLE) {
    const answer = await connection.ask("/api/v1/session", {
      method: "POST",
      json: { email, password: PASSWORD },
    });
    if (answer.status !== 200) throw new Error(`${email} could not sign in: ${answer.body}`);
    cookies.push(answer.cookies.map((cookie) => cookie.split(";")[0] ?? "").join("; "));
  }
  connection.close();
  return cookies;
}

export interface Work {
  readonly origin: string;
  readonly cookies: readonly string[];
  /** Cases that there are. */
  readonly cases: number;
  /** Screens at once; several belong to one person. */
  readonly screens: number;
  /** Least and most time between an answer and the next, in milliseconds. */
  readonly think: readonly [number, number];
  readonly forMs: number;
}

/** All at one moment would be a queue to begin with, and it would tell about nothing else. */
const ARRIVING_MS = 15_000;

/** One screen of a person. */
class Screen {
  readonly #work: Work;
  readonly #tally: Tally;
  readonly #person: number;
  readonly #connection: Connection;
  readonly uniform: () => number;
  readonly until: number;

  constructor(work: Work, tally: Tally, number: number, until: number) {
    this.#work = work;
    this.#tally = tally;
    this.#person = number % PEOPLE.length;
    this.#connection = new Connection(work.origin);
    this.uniform = seededUniform(number + 1);
    this.until = until;
  }

  get over(): boolean {
    return performance.now() > this.until;
  }

  get #cookie(): string {
    return this.#work.cookies[this.#person] ?? "";
  }

  anyCase(): string {
    return caseFor(this.#person, this.uniform(), this.#work.cases);
  }

  think(): Promise<void> {
    const [least, most] = this.#work.think;
    const ms = least + (most - least) * this.uniform();
    return sleep(Math.max(0, Math.min(ms, this.until - performance.now())));
  }

  async ask(path: string, sent: Sent = {}): Promise<Answer> {
    const answer = await this.#connection.ask(path, { cookie: this.#cookie, ...sent });
    if (answer.status !== 200) this.#tally.wrong(`${path}: ${answer.status} ${answer.body.slice(0, 200)}`);
    return answer;
  }

  took(what: string, ms: number): void {
    this.#tally.took(what, ms);
  }

  follow(caseId: string, heard: (version: number) => void): () => void {
    return this.#connection.follow(
      `/api/v1/cases/${caseId}/events`,
      { cookie: this.#cookie },
      (data) => {
        heard(Number(data));
      },
      (error) => {
        this.#tally.wrong(`following: ${error.message}`);
      },
    );
  }

  close(): void {
    this.#connection.close();
  }
}

const entriesOf = (caseId: string): string => `/api/v1/cases/${caseId}/entries`;

/** One new entry of a case. */
const newEntry = (caseId: string, uniform: () => number): object => ({
  caseId,
  at: new Date().toISOString(),
  by: "technician",
  ...step(uniform, randomUUID()),
});

const addition = (caseId: string, uniform: () => number): Sent => ({
  method: "POST",
  json: { entries: [newEntry(caseId, uniform)] },
});

/** Opens a case, adds to it answer by answer, hears and reads the news of it, looks at the list now and then. */
async function workOnCase(screen: Screen): Promise<void> {
  const caseId = screen.anyCase();
  const head = await screen.ask(`/api/v1/cases/${caseId}`);
  const whole = await screen.ask(entriesOf(caseId));
  screen.took("open", head.ms + whole.ms);
  let version = (JSON.parse(whole.body) as { version: number }).version;
  let sentAt: number | undefined;
  const stop = screen.follow(caseId, (told) => {
    if (sentAt === undefined || told <= version) return;
    screen.took("hear", performance.now() - sentAt);
    sentAt = undefined;
  });
  for (let answers = 2 + Math.floor(4 * screen.uniform()); answers > 0; answers--) {
    await screen.think();
    if (screen.over) break;
    sentAt = performance.now();
    const added = await screen.ask(entriesOf(caseId), addition(caseId, screen.uniform));
    screen.took("add", added.ms);
    const news = await screen.ask(`${entriesOf(caseId)}?after=${version}`);
    screen.took("news", news.ms);
    version = (JSON.parse(news.body) as { version: number }).version;
    if (screen.uniform() < 0.1) screen.took("list", (await screen.ask("/api/v1/cases")).ms);
    if (screen.uniform() < 0.05) {
      const plate = `hl ${String(Math.floor(1e5 * screen.uniform())).padStart(6, "0")}`;
      screen.took("search", (await screen.ask(`/api/v1/cases?text=${encodeURIComponent(plate)}`)).ms);
    }
  }
  stop();
}

/** People at work for a while, with time to think between their answers; they come one by one. */
export async function peopleAtWork(work: Work, job = workOnCase): Promise<Tally> {
  const tally = new Tally();
  const arriving = ARRIVING_MS;
  const start = performance.now();
  tally.countFrom = start + arriving;
  const until = start + arriving + work.forMs;
  await Promise.all(
    Array.from({ length: work.screens }, async (_, number) => {
      const screen = new Screen(work, tally, number, until);
      await sleep((arriving * number) / work.screens);
      try {
        while (!screen.over) await job(screen);
      } catch (error) {
        tally.wrong(String(error));
      }
      screen.close();
    }),
  );
  return tally;
}

/** The same people sending the same entries at the same pace to a route that does nothing with them. */
export function sendingToBareRoute(work: Work): Promise<Tally> {
  return peopleAtWork(work, async (screen) => {
    await screen.think();
    screen.took("bare", (await screen.ask("/entries", addition(screen.anyCase(), screen.uniform))).ms);
  });
}

/** Entries a second that go through when every screen sends the next one as soon as the last is answered. */
export async function throughput(work: Work, path: (caseId: string) => string): Promise<[number, Tally]> {
  const tally = new Tally();
  const start = performance.now();
  await Promise.all(
    Array.from({ length: work.screens }, async (_, number) => {
      const screen = new Screen(work, tally, number + madeNumber(start), start + work.forMs);
      const caseId = screen.anyCase();
      try {
        while (!screen.over) {
          screen.took("add", (await screen.ask(path(caseId), addition(caseId, screen.uniform))).ms);
        }
      } catch (error) {
        tally.wrong(String(error));
      }
      screen.close();
    }),
  );
  const sent = tally.times.get("add")?.length ?? 0;
  return [(1000 * sent) / (performance.now() - start), tally];
}

export const throughEntries = (work: Work): Promise<[number, Tally]> => throughput(work, entriesOf);
export const throughBareRoute = (work: Work): Promise<[number, Tally]> => throughput(work, () => "/entries");

/** Another number every round, so that cases are not the same ones; a multiple of the people, so that they are. */
const madeNumber = (start: number): number =>
  PEOPLE.length * (Number.parseInt(madeId(String(start)).slice(0, 4), 16) + 1);

/** Looks at lists one after the other on an otherwise idle server, as one person. */
export async function lookAtLists(
  work: Work,
  person: number,
  times: number,
  paths: readonly (readonly [string, (n: number) => string])[],
): Promise<Tally> {
  const tally = new Tally();
  const screen = new Screen(work, tally, person, Number.POSITIVE_INFINITY);
  for (let n = 0; n < times; n++) {
    for (const [what, path] of paths) {
      const answer = await screen.ask(path(n));
      if (n > 0) screen.took(what, answer.ms); // the first of each only warms up
    }
  }
  screen.close();
  return tally;
}

/** Where the page of that number of the list begins, by going there page by page. */
export async function cursorOfPage(work: Work, person: number, page: number): Promise<string> {
  const screen = new Screen(work, new Tally(), person, Number.POSITIVE_INFINITY);
  let cursor = "";
  for (let n = 1; n < page; n++) {
    const { body } = await screen.ask(`/api/v1/cases${cursor === "" ? "" : `?after=${cursor}`}`);
    cursor = (JSON.parse(body) as { next: string | null }).next ?? "";
  }
  screen.close();
  if (cursor === "") throw new Error(`The list has no page ${page}.`);
  return cursor;
}
