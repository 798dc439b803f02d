import { createHash } from "node:crypto";

/** What is kept of a token, so that whoever reads the database cannot use it: its SHA-256, in hexadecimal. */
export const hashOfToken = (token: string): string => createHash("sha256").update(token).digest("hex");
