import { CornerwiseError } from "../errors.ts";
import { canonicalJson, type Sha256, sha256Hex } from "./canonical.ts";
import { Knowledge } from "./schema/compiled.ts";

/** Form of the compiled knowledge that this library reads. */
export const SCHEMA_VERSION = 1;

/** A frozen knowledge: its text and the SHA-256 of that text's UTF-8 bytes. */
export interface Release {
  readonly text: string;
  readonly sha256: string;
}

/**
 * Freeze a knowledge: canonical text, with version and schema version inside, and its SHA-256.
 *
 * Equal knowledge gives equal bytes, whatever order its files were read in.
 */
export async function freezeRelease(knowledge: Knowledge, digest: Sha256): Promise<Release> {
  const text = `${canonicalJson(knowledge)}\n`;
  return { text, sha256: await sha256Hex(text, digest) };
}

/**
 * Open a frozen knowledge and verify that it is the one expected.
 *
 * Errors  "bad-record" when the SHA-256 differs; otherwise as `parseRelease`.
 */
export async function openRelease(text: string, expectedSha256: string, digest: Sha256): Promise<Knowledge> {
  const sha256 = await sha256Hex(text, digest);
  if (sha256 !== expectedSha256.toLowerCase()) {
    throw new CornerwiseError(
      "bad-record",
      `the release has SHA-256 ${sha256}, but ${expectedSha256} was expected. It was changed or damaged: fetch it again.`,
      { sha256, expectedSha256 },
    );
  }
  return parseRelease(text);
}

/**
 * Read a frozen knowledge's text, without a SHA-256 to hold it against.
 *
 * Errors  "not-readable" when it is not JSON; "bad-record" when its schema version is another one (both are named) or its form is wrong.
 */
export function parseRelease(text: string): Knowledge {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (cause) {
    const what = cause instanceof Error ? cause.message : String(cause);
    throw new CornerwiseError(
      "not-readable",
      `the release is not JSON (${what}). Fetch it again.`,
      {},
      { cause },
    );
  }
  const found =
    typeof json === "object" && json !== null && Object.hasOwn(json, "schemaVersion")
      ? (json as { schemaVersion: unknown }).schemaVersion
      : undefined;
  if (found !== SCHEMA_VERSION) {
    throw new CornerwiseError(
      "bad-record",
      `the release has schema version ${JSON.stringify(found) ?? "none"}, this library reads schema version ${SCHEMA_VERSION}. Use a release and a library that agree.`,
      { found, reads: SCHEMA_VERSION },
    );
  }
  const result = Knowledge.safeParse(json);
  if (result.success) return result.data;
  const issues = result.error.issues.map((issue) => `${issue.path.join(".")}: ${issue.message}`);
  throw new CornerwiseError(
    "bad-record",
    `the release does not follow its schema:\n${issues.slice(0, 20).join("\n")}\nFreeze it again from its files.`,
    { issues },
  );
}
