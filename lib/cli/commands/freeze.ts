import { join } from "node:path";
import { CornerwiseError } from "../../errors.ts";
import { freezeRelease } from "../../knowledge/release.ts";
import { goneIds } from "../../knowledge/gone-ids.ts";
import { type Command, EXIT } from "../command.ts";
import { frozenReleases, sha256, sha256Sums, writeRelease } from "../files.ts";
import { knowledgeFolder, loadFolder, loadVersion } from "../load-knowledge.ts";
import { readArgs } from "../read-args.ts";

/** `cornerwise freeze`: write a release of the knowledge, once. */
export const freezeCommand: Command = {
  name: "freeze",
  summary: "freeze the knowledge as the release that its manifest names",
  help: `Use: cornerwise freeze [FOLDER]

Compile the knowledge in FOLDER (knowledge/ when left out) and write
releases/VERSION/compiled.json and SHA256SUMS into it; VERSION is that of
manifest.json. A frozen release is never changed: when that version is there with
other contents, nothing is written. An id that an earlier release held must still
have its record, live or ended.

Examples:
  cornerwise freeze
  (cd knowledge/releases/0.1.0 && sha256sum --check SHA256SUMS)

Exit codes: 0 written, or there already and the same; 1 an id went without a record;
2 called wrongly; 3 could not be done.
`,
  async run(args, io) {
    const { positionals } = readArgs(args, {}, 1);
    const folder = knowledgeFolder(positionals[0], io.cwd);
    const { authored, knowledge } = loadFolder(folder);
    const gone: string[] = [];
    for (const earlier of frozenReleases(folder)) {
      gone.push(...goneIds(await loadVersion(earlier.folder, io.cwd), authored));
    }
    if (gone.length > 0) {
      io.stderr(`cornerwise freeze: ${[...new Set(gone)].join("\n")}\n`);
      return EXIT.problems;
    }
    const release = await freezeRelease(knowledge, sha256);
    const target = join(folder, "releases", knowledge.version);
    try {
      const done = writeRelease(target, release);
      io.stderr(`${done === "same" ? "already there, the same" : "written"}: ${target}\n`);
    } catch (error) {
      if (!(error instanceof CornerwiseError)) throw error;
      io.stderr(`cornerwise freeze: ${error.message}\n`);
      return EXIT.failure;
    }
    io.stdout(sha256Sums(release));
    return EXIT.ok;
  },
};
