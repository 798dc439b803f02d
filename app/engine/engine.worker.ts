/// <reference lib="webworker" />
import "../headers/no-eval.ts";
import { readCar } from "../../lib/car/car.ts";
import { usage } from "../../lib/car/usage.ts";
import {
  type Batch,
  bounded,
  type Decision,
  decideNext,
  drawSteadiness,
  mindChangers,
  mindWords,
  misfit,
  misfitWords,
  placedChecks,
  type ProposedCheck,
  proposeBatch,
  type RankedSuspect,
  rankingRows,
  rowName,
  steadyWords,
  stopSignal,
  suspectName,
  unexplainedWords,
  wearView,
  whySuspect,
  workshopCosts,
} from "../../lib/engine/index.ts";
import { caseUrgency } from "../../lib/case/case-urgency.ts";
import { situationOf } from "../../lib/case/situation.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import { readText, searchAll, searchChecks, searchFindings, sidesByTraffic } from "../../lib/words/index.ts";
import { messageOf } from "../text/message-of.ts";
import { advise, book, questions } from "./desk-answers.ts";
import type {
  Doubted,
  Found,
  Kind,
  Leader,
  MindChange,
  NextSteps,
  Questions,
  Ranked,
  Situation,
  Wear,
} from "./protocol.ts";
import {
  askedFor,
  foresee,
  groundOf,
  load,
  loaded,
  pause,
  previews,
  proposals,
  weighingOf,
} from "./worked-out.ts";
import type { FromWorker, ToWorker } from "./worker-messages.ts";

declare const self: DedicatedWorkerGlobalScope;

const MOST_FOUND = 30;

function leader({ suspect, explains, present, proven }: RankedSuspect): Leader {
  const { id, part, fault, place } = suspect;
  return { id, part, fault, place, name: suspectName(loaded(), suspect), explains, present, proven };
}

function rank(situation: Situation): Ranked {
  askedFor(situation);
  const ground = groundOf(situation);
  const weighed = bounded(ground, weighingOf(situation));
  const { ranking, ...rest } = weighed;
  const leaders = new Map(ranking.map((ranked) => [ranked.suspect.id, leader(ranked)]));
  const rows = rankingRows(ground, weighed).map((row) => ({
    id: row.id,
    name: rowName(loaded(), row),
    explains: row.explains,
    presentBounds: row.presentBounds,
    proven: row.proven,
    // The same objects as in `leaders`: a message carries what is named twice once.
    members: row.suspects.map((ranked) => leaders.get(ranked.suspect.id) ?? leader(ranked)),
  }));
  return { ...rest, rows, leaders: [...leaders.values()] };
}

function propose(ask: Questions["propose"]["ask"]): NextSteps {
  const checks = proposals(ask, ask.options).slice(0, ask.options.limit);
  void foresee(ask, ask.options, checks[0]);
  return { checks, stop: stopSignal(weighingOf(ask).weighed, checks) };
}

function decide({ options, own, ...situation }: Questions["decide"]["ask"]): Decision {
  const costs = workshopCosts(loaded(), own);
  const checks = proposals(situation, options);
  return decideNext(groundOf(situation), situation.answers, weighingOf(situation), checks, { costs });
}

function batch({ options, ...situation }: Questions["batch"]["ask"]): Batch | undefined {
  return proposeBatch(groundOf(situation), situation.answers, weighingOf(situation), options);
}

function wear({ car, options }: Questions["wear"]["ask"]): Wear {
  return {
    used: usage(loaded(), readCar(loaded(), car).car),
    lines: wearView(loaded(), car, options),
  };
}

const DRAWS = 200;
const DRAWS_AT_A_TIME = 5;

async function doubt(situation: Situation): Promise<Doubted | undefined> {
  // Said here too: the question may come before the weighing that waits behind an older one, and is asked only once.
  const stillAsked = askedFor(situation);
  await pause();
  if (!stillAsked()) return undefined;
  const ground = groundOf(situation);
  const { answers } = situation;
  const { weighed } = weighingOf(situation);
  const fit = misfit(ground, answers, weighed);
  const draws = drawSteadiness(ground, answers, weighed, seededUniform(1));
  for (let made = 0; made < DRAWS; made += DRAWS_AT_A_TIME) {
    await pause();
    if (!stillAsked()) return undefined;
    draws?.more(DRAWS_AT_A_TIME);
  }
  const steady = draws?.soFar();
  return {
    steady: steady && { kind: steady.kind, words: steadyWords(ground, steady) },
    lookAgain: fit.lookAgain && {
      finding: fit.lookAgain.finding,
      by: fit.lookAgain.by,
      words: misfitWords(ground, fit) ?? "",
    },
    unexplained: unexplainedWords(fit),
  };
}

function mind({ options, ...situation }: Questions["mind"]["ask"]): MindChange[] {
  const grounded = groundOf(situation);
  const weighing = weighingOf(situation);
  const proposed = proposals(situation, options).slice(0, options.limit);
  return mindChangers(grounded, situation.answers, weighing.weighed, proposed).map((changer) => ({
    check: changer.check.id,
    name: changer.check.name,
    isQuestion: changer.check.kind === "question",
    probability: changer.probability,
    words: mindWords(grounded, changer),
  }));
}

function open({ id, setUp, ...situation }: Questions["open"]["ask"]): ProposedCheck | undefined {
  const placed = placedChecks(groundOf(situation)).find((p) => p.id === id);
  if (placed === undefined) return undefined;
  const { check, place, nodes } = placed;
  const { setUps } = loaded();
  return {
    id,
    kind: "check",
    check,
    place,
    name: check.name,
    minutes: check.minutes,
    setUpMinutes: setUps.minutes[setUp ?? setUps.start]?.[check.setUp] ?? 0,
    setUp: check.setUp,
    gainBits: 0,
    score: 0,
    settles: nodes.map((n) => ({ finding: n.id, levels: n.observation.levels })),
    yes: undefined,
  };
}

function search(query: string): Found[] {
  const findings = searchFindings(loaded(), query, 12).map(
    ({ id, name }) => ({ kind: "finding", id, name }) as const,
  );
  const checks = searchChecks(loaded(), query, 6).map(
    ({ id, name }) => ({ kind: "check", id, name }) as const,
  );
  return [...findings, ...checks];
}

type Answering<K extends Kind> = (
  ask: Questions[K]["ask"],
) => Questions[K]["answer"] | Promise<Questions[K]["answer"]>;

const ANSWERS: { readonly [K in Kind]: Answering<K> } = {
  weigh: rank,
  propose,
  preview: (ask) =>
    previews(ask, ask.proposed).map(({ leaders, ...rest }) => ({
      ...rest,
      leaders: leaders.map(leader),
    })),
  decide,
  batch,
  wear,
  doubt,
  mind,
  questions,
  advise,
  book,
  urgency: ({ state, advice }) => caseUrgency(loaded(), situationOf(loaded(), state), advice),
  why: (ask) => whySuspect(groundOf(ask), ask.answers, ask.suspect),
  open,
  read: ({ text, traffic }) => ({
    proposals: readText(loaded(), text, { traffic }),
    sides: sidesByTraffic(loaded(), text),
  }),
  search: ({ query }) => search(query),
  find: ({ query }) => searchAll(loaded(), query, MOST_FOUND),
};

self.onmessage = ({ data }: MessageEvent<ToWorker<Questions>>) => {
  if (data.kind === "load") {
    load(data.knowledge, data.isNewest);
    return;
  }
  const { id } = data;
  const start = performance.now();
  const reply = (answer: FromWorker): void => {
    // Read by `npm run bench -- browser`.
    performance.measure(data.kind, { start });
    self.postMessage(answer);
  };
  const failed = (error: unknown): void => reply({ id, failed: messageOf(error) });
  try {
    const answer = (ANSWERS[data.kind] as (ask: unknown) => unknown)(data.ask);
    if (answer instanceof Promise) answer.then((late: unknown) => reply({ id, answer: late }), failed);
    else reply({ id, answer });
  } catch (error) {
    failed(error);
  }
};
