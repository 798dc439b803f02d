/** A tab that a phone has put to sleep may hold its turn for ever; after this long nobody waits for it. */
const PATIENCE_MS = 15_000;

/**
 * Does the work while no other tab of this browser does the same.
 *
 * Where the browser has no locks (a plain http address in a workshop's own network), or the other tab does not come to an
 * end, the work is done all the same: sending twice does no harm, it only costs a little.
 */
export async function oneTabAtATime(name: string, work: () => Promise<void>): Promise<void> {
  if (!("locks" in navigator)) return work();
  let had = false;
  try {
    await navigator.locks.request(name, { signal: AbortSignal.timeout(PATIENCE_MS) }, async () => {
      had = true;
      await work();
    });
  } catch (error) {
    if (had) throw error;
    await work();
  }
}
