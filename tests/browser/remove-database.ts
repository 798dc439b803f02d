import { rmSync } from "node:fs";
import { dirname } from "node:path";

/** Removes the throw-away database that the server of the browser tests wrote to. */
export default function removeDatabase(): void {
  const path = process.env.E2E_DATABASE;
  if (path !== undefined) rmSync(dirname(path), { recursive: true, force: true });
}
