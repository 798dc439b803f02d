import { resolve } from "node:path";
import { CaseCar } from "../../case/entries.ts";
import { suspectName } from "../../engine/index.ts";
import { CornerwiseError } from "../../errors.ts";
import type { Knowledge } from "../../knowledge/schema/compiled.ts";
import { seededUniform } from "../../maths/seeded-uniform.ts";
import {
  drawExercise,
  type Difficulty,
  type Exercise,
  type ExercisePreview,
  previewExercise,
  readExercisesFile,
  readyExercise,
} from "../../training/index.ts";
import { type Command, type CommandIo, EXIT } from "../command.ts";
import { readText } from "../files.ts";
import { KNOWLEDGE_HELP, loadKnowledge, loadVersion } from "../load-knowledge.ts";
import { readArgs } from "../read-args.ts";

const LEVELS: readonly Difficulty["level"][] = ["easy", "middling", "hard"];

/** `cornerwise exercise`: look exercises with a hidden fault through, or draw one. */
export const exerciseCommand: Command = {
  name: "exercise",
  summary: "look exercises with a hidden fault through, or draw one",
  help: `Use: cornerwise exercise check FILE [--id ID] [--json]
     cornerwise exercise draw --level LEVEL [--complaint ID] [--car JSON] [--seed N]

check goes the best way through every exercise of a file (one exercise, or a course):
how hard it is, which checks lead to the hidden fault, which parts seem to be it on
the way, and whether the checks that exist tell it from the others. Each is worked
with the release that it names. What it prints gives the answer away.

draw prints an exercise of the wanted difficulty as JSON, drawn from the model: what
is wrong, what the customer says and every result follow it. The same seed gives the
same exercise.

  --id ID          only the exercise with this id
  --json           the whole previews as JSON
  --level LEVEL    easy, middling or hard, as reckoned
  --complaint ID   complaint that it is about; any when left out
  --car JSON       such as '{"drive": "front", "odometerKm": 120000}'; what is left
                   out is as with a typical car
  --seed N         0 when left out
  --name NAME      name of the exercise
${KNOWLEDGE_HELP}

Examples:
  cornerwise exercise check knowledge/exercises/harbour-lane.json
  cornerwise exercise draw --level hard --complaint shake --seed 7 > hard.json

Exit codes: 0 sound, 1 one cannot be solved or told apart, 2 called wrongly, 3 could
not be done.
`,
  async run(args, io) {
    const { values, positionals } = readArgs(
      args,
      {
        id: { type: "string" },
        json: { type: "boolean" },
        level: { type: "string" },
        complaint: { type: "string" },
        car: { type: "string" },
        seed: { type: "string" },
        name: { type: "string" },
        knowledge: { type: "string" },
      },
      2,
    );
    const [what, file] = positionals;
    if (what === "check" && file !== undefined)
      return check(file, values.id, values.json === true, values.knowledge, io);
    if (what === "draw" && file === undefined) return draw(values, io);
    throw new CornerwiseError("bad-request", "say check FILE, or draw.");
  },
};

async function check(
  file: string,
  id: string | undefined,
  json: boolean,
  named: string | undefined,
  io: CommandIo,
): Promise<number> {
  const { exercises } = readExercisesFile(readText(resolve(io.cwd, file)));
  const wanted = exercises.filter((e) => id === undefined || e.id === id);
  if (wanted.length === 0) {
    const ids = exercises.map((e) => e.id).join(", ");
    throw new CornerwiseError("unknown-id", `the file has no exercise "${String(id)}". It has: ${ids}.`);
  }
  const knowledges = new Map<string, Knowledge>();
  let unsound = 0;
  for (const exercise of wanted) {
    const { release } = exercise;
    const knowledge =
      knowledges.get(release) ??
      (named === undefined ? await loadVersion(release, io.cwd) : await loadKnowledge(named, io.cwd));
    knowledges.set(release, knowledge);
    const ready = readyExercise(knowledge, exercise);
    const preview = previewExercise(ready);
    const sound = preview.difficulty.solvable && preview.notTold.length === 0;
    if (!sound) unsound += 1;
    const hidden = [...ready.causes, ...ready.innocent].map((s) => suspectName(knowledge, s));
    io.stdout(
      json ? `${JSON.stringify({ id: exercise.id, hidden, preview })}\n` : words(exercise, hidden, preview),
    );
  }
  io.stderr(`${wanted.length} looked through, ${unsound} cannot be solved or told apart\n`);
  return unsound === 0 ? EXIT.ok : EXIT.problems;
}

function words(
  exercise: Exercise,
  hidden: readonly string[],
  { difficulty, path, traps, notTold }: ExercisePreview,
): string {
  const named = (list: readonly { repair: string; chance: number }[]): string =>
    list.map(({ repair, chance }) => `${repair} (${chance.toFixed(2)})`).join(", ") || "none";
  const { level, bestMinutes, solvable, rank, rivals, misleading } = difficulty;
  return `${exercise.id}: ${exercise.name}
  ${level}, ${bestMinutes} min the best way, ${solvable ? "ends at the hidden part" : "DOES NOT END AT THE HIDDEN PART"}
  at first: place ${rank} of the ranking, ${rivals} about as likely; misleading: ${misleading.join("; ") || "nothing"}
  hidden: ${hidden.join("; ")}
  best way: ${path.map((c) => c.id).join(" > ")}
  traps: ${named(traps)}
  not to be told from it: ${named(notTold)}
`;
}

async function draw(
  values: Readonly<Partial<Record<"level" | "complaint" | "car" | "seed" | "name" | "knowledge", string>>>,
  io: CommandIo,
): Promise<number> {
  const level = LEVELS.find((l) => l === values.level);
  if (level === undefined) throw new CornerwiseError("bad-request", `--level takes ${LEVELS.join(", ")}.`);
  const seed = Number(values.seed ?? "0");
  if (!Number.isSafeInteger(seed) || seed < 0)
    throw new CornerwiseError("bad-request", "--seed takes a whole number, 0 or more.");
  const knowledge = await loadKnowledge(values.knowledge, io.cwd);
  const { exercise, difficulty } = drawExercise(
    knowledge,
    {
      id: `drawn-${seed}`,
      name: values.name ?? "Drawn (invented)",
      release: knowledge.version,
      car: carOf(values.car),
      complaint: values.complaint,
      level,
    },
    seededUniform(seed),
  );
  io.stdout(`${JSON.stringify(exercise, null, 2)}\n`);
  const fits = difficulty.level === level && difficulty.solvable;
  if (!fits) {
    const how = difficulty.solvable ? difficulty.level : "not to be solved by the best way";
    io.stderr(`The nearest that was drawn is ${how}; try another seed, complaint or car.\n`);
  }
  return fits ? EXIT.ok : EXIT.problems;
}

function carOf(text: string | undefined): Exercise["car"] {
  if (text === undefined) return {};
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (cause) {
    throw new CornerwiseError(
      "bad-request",
      `--car is not JSON; write it as '{"drive": "front"}'.`,
      {},
      { cause },
    );
  }
  const car = CaseCar.safeParse(json);
  if (car.success) return car.data;
  const where = car.error.issues.map((i) => `${["car", ...i.path].join(".")}: ${i.message}`).join("; ");
  throw new CornerwiseError("bad-request", `--car: ${where}`);
}
