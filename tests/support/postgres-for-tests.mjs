// Starts a PostgreSQL server before the tests that need a database, and names it to them in TEST_POSTGRES.
import { findPostgres, POSTGRES_ADVICE } from "./find-postgres.mjs";
import { startPostgres } from "./postgres-server.mjs";

let server;

/** Without a server they run on the embedded database alone; in CI that is a failure. */
export async function setup() {
  const bin = findPostgres();
  if (bin === undefined) {
    if (process.env.CI) throw new Error(POSTGRES_ADVICE);
    process.stderr.write(`${POSTGRES_ADVICE} The tests on PostgreSQL are left out.\n`);
    return;
  }
  server = await startPostgres(bin);
  process.env.TEST_POSTGRES = server.url("postgres");
}

export async function teardown() {
  await server?.clear();
}
