import { availableParallelism } from "node:os";
import { Worker } from "node:worker_threads";

/** What is said and kept while jobs are worked through. */
interface Progress<Result> {
  /** Jobs done at another time: they count in the bar. */
  readonly before?: number;
  /** Called with each result as it comes. */
  readonly played?: (at: number, result: Result) => void;
}

/**
 * Works through jobs on worker threads, with a progress bar on stderr. Results come in the order of the jobs, so that the
 * number of threads changes nothing.
 */
export async function workThrough<Result>(
  worker: URL,
  label: string,
  jobs: readonly unknown[],
  { before = 0, played }: Progress<Result> = {},
): Promise<Result[]> {
  if (jobs.length === 0) return [];
  const results = new Array<Result>(jobs.length);
  const start = performance.now();
  let next = 0;
  let done = 0;
  const show = (): void => {
    const share = done / jobs.length;
    const all = before + jobs.length;
    const bar = "#".repeat(Math.round((30 * (before + done)) / all)).padEnd(30, ".");
    const seconds = (performance.now() - start) / 1000;
    const left = done === 0 ? "" : `, about ${Math.ceil((seconds * (1 - share)) / share)} s left`;
    const end = done === jobs.length ? "\n" : "";
    const line = `${label} [${bar}] ${before + done}/${all} after ${Math.round(seconds)} s${left}`;
    if (process.stderr.isTTY) process.stderr.write(`\r${line}   ${end}`);
    // Without a terminal a line a tenth is enough.
    else if (done === jobs.length || done % Math.max(1, Math.round(jobs.length / 10)) === 0)
      process.stderr.write(`${line}\n`);
  };
  const oneThread = (): Promise<void> =>
    new Promise((resolve, reject) => {
      // Tables of one weighing live for a moment: room for many of them saves collecting each.
      const thread = new Worker(worker, { resourceLimits: { maxYoungGenerationSizeMb: 192 } });
      let at = -1;
      const give = (): void => {
        if (next >= jobs.length) {
          void thread.terminate().then(() => resolve());
          return;
        }
        at = next;
        next += 1;
        thread.postMessage(jobs[at]);
      };
      thread.on("message", (result: Result) => {
        results[at] = result;
        done += 1;
        played?.(at, result);
        show();
        give();
      });
      thread.on("error", reject);
      give();
    });
  const threads = Math.max(1, Math.min(availableParallelism(), jobs.length));
  await Promise.all(Array.from({ length: threads }, oneThread));
  return results;
}
