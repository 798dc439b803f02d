import { problemOf } from "./failure.ts";
import { openServer } from "./server.ts";
import { makeSetUpCode } from "./set-up-code.ts";

const say = (text: string): void => {
  process.stderr.write(`${text}\n`);
};

/**
 * Opens the database, so that what is wrong with it shows at the start, and prints the set-up code where one is needed.
 *
 * The pages and what devices keep need no database: without one the server runs on and says so.
 */
export async function whenStarted(): Promise<void> {
  try {
    const server = await openServer();
    if (server.config.bound === "loopback" || (await server.hasAccounts())) return;
    say("Nobody has an account yet: no data is served until the first one, the owner's, is made.");
    say(
      `Open /set-up in a browser. Set-up code, good for a day: ${await makeSetUpCode(server.store, new Date())}`,
    );
  } catch (error) {
    problemOf(error); // writes the reason to the console
    say("The server runs without its database. Devices keep what is entered until it answers.");
  }
}
