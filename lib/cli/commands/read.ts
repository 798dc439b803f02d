import { CornerwiseError } from "../../errors.ts";
import { readText, sidesByTraffic, type Traffic } from "../../words/index.ts";
import { type Command, EXIT } from "../command.ts";
import { KNOWLEDGE_HELP, loadKnowledge } from "../load-knowledge.ts";
import { readArgs } from "../read-args.ts";

const HELP = `Use: cornerwise read [options] ["TEXT"]

Reads an owner's or a mechanic's own words, from the argument or from standard
input, and prints the findings that they tell of as a JSON array:
  [{"finding", "state": "present|absent", "level"?, "words", "spans": [{"from", "to"}],
    "confidence", "hedged", "name"}]
"words" are the exact words of the text; "spans" are where they stand in it.
Nothing recognised gives [].

Options:
  --speed-unit mph|km/h    unit of speeds that are told without one
  --traffic left|right     side of the road that traffic keeps to; it tells which
                           side "nearside" and "driver's side" are. Without it such
                           words give no side and are named on standard error.
${KNOWLEDGE_HELP}
  --help                   this text

Exit codes: 0 ok, 2 called wrongly, 3 it could not be done.

Example:
  cornerwise read "clunk from the front left over small bumps, not when braking"
`;

/** `cornerwise read`: free text in, proposed findings out. */
export const readCommand: Command = {
  name: "read",
  summary: "propose the findings that an owner's own words tell of",
  help: HELP,
  run: async (args, io) => {
    const { values, positionals } = readArgs(
      args,
      { "speed-unit": { type: "string" }, traffic: { type: "string" }, knowledge: { type: "string" } },
      1,
    );
    const unit = speedUnit(values["speed-unit"]);
    const traffic = trafficSide(values.traffic);
    const knowledge = await loadKnowledge(values.knowledge, io.cwd);
    const text = positionals[0] ?? (await io.stdin());
    const proposals = readText(knowledge, text, { ...(unit && { speedUnit: unit }), traffic });
    const open = traffic === undefined ? sidesByTraffic(knowledge, text) : [];
    if (open.length > 0) {
      const words = [...new Set(open.map((side) => `"${side.words}"`))].join(", ");
      io.stderr(
        `Left or right not known: ${words}. Say with --traffic which side of the road is driven on.\n`,
      );
    }
    io.stdout(`${JSON.stringify(proposals, null, 2)}\n`);
    return EXIT.ok;
  },
};

function speedUnit(given: string | undefined): "mph" | "km/h" | undefined {
  if (given === undefined || given === "mph" || given === "km/h") return given;
  throw new CornerwiseError(
    "bad-request",
    `--speed-unit is "${given}". Give mph or km/h, or leave it out and let the text decide.`,
  );
}

function trafficSide(given: string | undefined): Traffic | undefined {
  if (given === undefined || given === "left" || given === "right") return given;
  throw new CornerwiseError(
    "bad-request",
    `--traffic is "${given}". Give left or right, the side of the road that is driven on, or leave it out.`,
  );
}
