import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { CornerwiseError } from "../errors.ts";
import { openRelease } from "../knowledge/release.ts";
import type { Knowledge } from "../knowledge/schema/compiled.ts";
import { frozenReleases, RELEASE_FILE, readText, sha256 } from "./files.ts";
import { packageFolder } from "./package-folder.ts";

/** Releases kept ready: cases and exercises of a workshop name few of them at a time. */
const MOST_KEPT = 4;

interface Place {
  readonly version: string;
  readonly sha256: string;
  readonly path: string;
}

/** The releases that lie on this machine, opened when a case names them. */
export interface ReleasesHere {
  /** SHA-256 of the one that new cases take. */
  readonly newest: string;
  /**
   * A release by SHA-256, or by version as older cases name it.
   *
   * Errors  "not-found" when it is not here; as openRelease.
   */
  readonly open: (release: string) => Promise<Knowledge>;
  /** SHA-256 of a release that is named by it or by the version of a frozen one; undefined when it is not here. */
  readonly sumOf: (release: string) => string | undefined;
}

/**
 * The release bundled with the library and the frozen ones of the repository.
 *
 * Errors  "not-found" when none was bundled.
 */
export function releasesHere(folder: string = packageFolder()): ReleasesHere {
  const bundled = join(folder, "release");
  if (!existsSync(join(bundled, RELEASE_FILE))) {
    throw new CornerwiseError("not-found", `no release lies in ${bundled}. Build the library.`);
  }
  const newest = placeOf("", bundled);
  const frozen = frozenReleases(join(dirname(folder), "knowledge"));
  const places = [newest, ...frozen.map((one) => placeOf(one.version, one.folder))];
  const kept = new Map<string, Promise<Knowledge>>();

  const placeNamed = (release: string): Place | undefined =>
    places.find((one) => one.sha256 === release) ?? places.find((one) => one.version === release);
  const open = (release: string): Promise<Knowledge> => {
    const place = placeNamed(release);
    if (place === undefined) {
      throw new CornerwiseError(
        "not-found",
        `The knowledge that this case is weighed with (${release}) is not on the server.`,
      );
    }
    const opened = kept.get(place.sha256) ?? openRelease(readText(place.path), place.sha256, sha256);
    kept.delete(place.sha256);
    kept.set(place.sha256, opened);
    for (const oldest of kept.keys()) {
      if (kept.size <= MOST_KEPT) break;
      kept.delete(oldest);
    }
    return opened;
  };
  return {
    newest: newest.sha256,
    open: async (release) => open(release),
    sumOf: (release) => placeNamed(release)?.sha256,
  };
}

function placeOf(version: string, folder: string): Place {
  const [sum = ""] = readText(join(folder, "SHA256SUMS")).split(/\s/);
  return { version, sha256: sum, path: join(folder, RELEASE_FILE) };
}
