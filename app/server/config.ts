import { isAbsolute, join } from "node:path";
import { isLoopbackHost } from "./loopback.ts";

/** What the person who runs the server decided; the only place that reads the environment. */
export interface Config {
  /** Path of the embedded database, or the address of PostgreSQL. */
  readonly database: string;
  /** Public origin, such as https://desk.example; absent: whatever name the server is called by. */
  readonly origin: string | undefined;
  /** Secret that signs the session cookies; absent: made once and kept in the database. */
  readonly secret: string | undefined;
  /** Whether only this machine can reach the server. */
  readonly bound: "loopback" | "network";
  /** Marks the address header that our own server process writes: without it anybody could send one. */
  readonly addressMark: string | undefined;
  /** Where results of exercises are sent to when staff ask for it; absent: nowhere. */
  readonly recordStore: RecordStore | undefined;
}

/** A learning record store that takes statements (IEEE 9274.1.1). */
export interface RecordStore {
  /** Without the `statements` at its end, and without a slash. */
  readonly endpoint: string;
  /** Empty: it asks for none. */
  readonly key: string;
  readonly secret: string;
}

/** A setting that cannot be used: says which, what is wrong and how to mend it. */
export class ConfigProblem extends Error {
  override readonly name = "ConfigProblem";
}

const SHORTEST_SECRET = 32;

type Environment = Readonly<Record<string, string | undefined>>;

const given = (value: string | undefined): string | undefined =>
  value === undefined || value.trim() === "" ? undefined : value.trim();

function databaseOf(value: string | undefined, folder: string): string {
  if (value === undefined) return join(folder, "data", "cornerwise.db");
  if (/^postgres(ql)?:\/\//.test(value)) return value;
  return isAbsolute(value) ? value : join(folder, value);
}

function originOf(value: string | undefined): string | undefined {
  if (value === undefined) return undefined;
  const url = URL.canParse(value) ? new URL(value) : undefined;
  if (url === undefined || !/^https?:$/.test(url.protocol) || url.pathname !== "/" || url.search !== "") {
    throw new ConfigProblem(
      `CORNERWISE_ORIGIN is "${value}": give scheme and host alone, such as https://desk.example.`,
    );
  }
  return url.origin;
}

function secretOf(value: string | undefined): string | undefined {
  if (value !== undefined && value.length < SHORTEST_SECRET) {
    throw new ConfigProblem(
      `CORNERWISE_SECRET has ${value.length} characters: give at least ${SHORTEST_SECRET} random ones, or leave it out.`,
    );
  }
  return value;
}

function recordStoreOf(env: Environment): RecordStore | undefined {
  const value = given(env.CORNERWISE_XAPI_ENDPOINT);
  const key = given(env.CORNERWISE_XAPI_KEY) ?? "";
  const secret = given(env.CORNERWISE_XAPI_SECRET) ?? "";
  if (value === undefined) return undefined;
  const url = URL.canParse(value) ? new URL(value) : undefined;
  // Results of people go over the network: in the clear only to this very machine.
  const safe = url?.protocol === "https:" || (url?.protocol === "http:" && isLoopbackHost(url.hostname));
  if (url === undefined || !safe || url.username !== "" || url.search !== "" || url.hash !== "") {
    throw new ConfigProblem(
      "CORNERWISE_XAPI_ENDPOINT cannot be used: give an https address without name, password or query, such as https://records.example/xapi.",
    );
  }
  if ((key === "") !== (secret === "") || key.includes(":")) {
    throw new ConfigProblem(
      "CORNERWISE_XAPI_KEY and CORNERWISE_XAPI_SECRET belong together: give both, the key without a colon, or neither.",
    );
  }
  if (given(env.CORNERWISE_ORIGIN) === undefined) {
    throw new ConfigProblem(
      "CORNERWISE_XAPI_ENDPOINT needs CORNERWISE_ORIGIN too: people and exercises are named in the record store by it.",
    );
  }
  return { endpoint: `${url.origin}${url.pathname.replace(/\/+(statements\/*)?$/, "")}`, key, secret };
}

/**
 * The settings from an environment; `folder` is where the app lies.
 *
 * Errors  ConfigProblem.
 */
export function readConfig(env: Environment, folder: string): Config {
  return {
    database: databaseOf(given(env.CORNERWISE_DATABASE), folder),
    origin: originOf(given(env.CORNERWISE_ORIGIN)),
    secret: secretOf(given(env.CORNERWISE_SECRET)),
    // Nobody said that it is the loopback address: then the stricter rules hold.
    bound: given(env.CORNERWISE_BOUND) === "loopback" ? "loopback" : "network",
    addressMark: given(env.CORNERWISE_ADDRESS_MARK),
    recordStore: recordStoreOf(env),
  };
}

/** The settings of this process. */
export function config(): Config {
  return readConfig(process.env, process.cwd());
}
