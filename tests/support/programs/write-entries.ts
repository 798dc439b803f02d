// Adds entries to a few cases until it is killed; says what was acknowledged, one delivery a line.
// Arguments: the database, a seed, a name for its entries.
import { writeSync } from "node:fs";
import { seededUniform } from "../../../lib/maths/seeded-uniform.ts";
import { appendEntries, openStore } from "../../../lib/store/index.ts";
import { note, opening, second } from "../made-entries.ts";

const CASES = ["crash-1", "crash-2", "crash-3"];
const [database = "", seed = "0", name = "w"] = process.argv.slice(2);
const uniform = seededUniform(Number(seed));
const upTo = (n: number): number => Math.floor(uniform() * n);

const store = await openStore({ database });
for (let batch = 0; ; batch++) {
  const caseId = CASES[upTo(CASES.length)] ?? "";
  const size = 1 + upTo(4);
  const ids = Array.from({ length: size }, (_, i) => `${name}-${batch}-${i}-of-${size}`);
  const notes = ids.map((id) => note(caseId, id, "x".repeat(upTo(3000) + 1), second(upTo(600))));
  // The opening comes again with every delivery, as from a device that does not know what has arrived.
  await appendEntries(store, {
    caseId,
    entries: [opening(caseId), ...notes],
    accountId: null,
    ownerId: null,
    now: second(batch),
  });
  // At once and by itself: an acknowledgement that waits in a buffer would be killed with the process.
  writeSync(1, `${JSON.stringify({ caseId, ids })}\n`);
}
