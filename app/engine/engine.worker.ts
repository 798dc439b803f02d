/// <reference lib="webworker" />
import { readCar } from "../../lib/car/car.ts";
import { usage } from "../../lib/car/usage.ts";
import {
  type Batch,
  type Decision,
  decideNext,
  type Grounded,
  groundCar,
  placedChecks,
  type ProposedCheck,
  type ProposeOptions,
  previewResults,
  proposeBatch,
  proposeChecks,
  type RankedSuspect,
  rankingRows,
  rowName,
  stopSignal,
  suspectName,
  wearView,
  type Weighing,
  weighing,
  whySuspect,
  workshopCosts,
} from "../../lib/engine/index.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { readText, searchAll, searchChecks, searchFindings } from "../../lib/words/index.ts";
import type {
  Found,
  FromWorker,
  Kind,
  Leader,
  NextSteps,
  Questions,
  Ranked,
  Situation,
  ToWorker,
  Wear,
} from "./protocol.ts";

declare const self: DedicatedWorkerGlobalScope;

const MOST_FOUND = 30;

let knowledge: Knowledge | undefined;
let grounded: { readonly key: string; readonly value: Grounded } | undefined;
let weighed: { readonly key: string; readonly value: Weighing } | undefined;
let proposed: { readonly of: Weighing; readonly key: string; readonly value: ProposedCheck[] } | undefined;

function loaded(): Knowledge {
  if (knowledge === undefined) throw new Error("The knowledge has not arrived.");
  return knowledge;
}

function ground({ car, contexts, fitted }: Situation): Grounded {
  const key = JSON.stringify([car, contexts, fitted]);
  if (grounded?.key !== key) grounded = { key, value: groundCar(loaded(), car, contexts, fitted) };
  return grounded.value;
}

function weighingOf(situation: Situation): Weighing {
  const key = JSON.stringify([situation.car, situation.contexts, situation.fitted, situation.answers]);
  if (weighed?.key !== key) weighed = { key, value: weighing(ground(situation), situation.answers) };
  return weighed.value;
}

function leader({ suspect, explains, present, proven }: RankedSuspect): Leader {
  const { id, part, fault, place } = suspect;
  return { id, part, fault, place, name: suspectName(loaded(), suspect), explains, present, proven };
}

/** All checks worth making, kept for the decision that is asked for next. */
function proposals(situation: Situation, options: ProposeOptions): readonly ProposedCheck[] {
  const weighing = weighingOf(situation);
  const unlimited = { ...options, limit: undefined };
  const key = JSON.stringify(unlimited);
  if (proposed?.of !== weighing || proposed.key !== key) {
    const value = proposeChecks(ground(situation), situation.answers, weighing, unlimited);
    proposed = { of: weighing, key, value };
  }
  return proposed.value;
}

function rank(situation: Situation): Ranked {
  const { weighed } = weighingOf(situation);
  const { ranking, ...rest } = weighed;
  const leaders = new Map(ranking.map((ranked) => [ranked.suspect.id, leader(ranked)]));
  const rows = rankingRows(ground(situation), weighed).map((row) => ({
    id: row.id,
    name: rowName(loaded(), row),
    explains: row.explains,
    proven: row.proven,
    // The same objects as in `leaders`: a message carries what is named twice once.
    members: row.suspects.map((ranked) => leaders.get(ranked.suspect.id) ?? leader(ranked)),
  }));
  return { ...rest, rows, leaders: [...leaders.values()] };
}

function propose(ask: Questions["propose"]["ask"]): NextSteps {
  const checks = proposals(ask, ask.options).slice(0, ask.options.limit);
  return { checks, stop: stopSignal(weighingOf(ask).weighed, checks) };
}

function decide({ options, own, ...situation }: Questions["decide"]["ask"]): Decision {
  const costs = workshopCosts(loaded(), own);
  const checks = proposals(situation, options);
  return decideNext(ground(situation), situation.answers, weighingOf(situation), checks, { costs });
}

function batch({ options, ...situation }: Questions["batch"]["ask"]): Batch | undefined {
  return proposeBatch(ground(situation), situation.answers, weighingOf(situation), options);
}

function wear({ car, options }: Questions["wear"]["ask"]): Wear {
  return {
    used: usage(loaded(), readCar(loaded(), car).car),
    lines: wearView(loaded(), car, options),
  };
}

function open({ id, setUp, ...situation }: Questions["open"]["ask"]): ProposedCheck | undefined {
  const placed = placedChecks(ground(situation)).find((p) => p.id === id);
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

const ANSWERS: { readonly [K in Kind]: (ask: Questions[K]["ask"]) => Questions[K]["answer"] } = {
  weigh: rank,
  propose,
  preview: (ask) =>
    previewResults(ground(ask), ask.answers, ask.proposed).map(({ leaders, ...rest }) => ({
      ...rest,
      leaders: leaders.map(leader),
    })),
  decide,
  batch,
  wear,
  why: (ask) => whySuspect(ground(ask), ask.answers, ask.suspect),
  open,
  read: ({ text }) => readText(loaded(), text),
  search: ({ query }) => search(query),
  find: ({ query }) => searchAll(loaded(), query, MOST_FOUND),
};

self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  if (data.kind === "load") {
    knowledge = JSON.parse(data.knowledge) as Knowledge;
    return;
  }
  let reply: FromWorker;
  const start = performance.now();
  try {
    reply = { id: data.id, answer: (ANSWERS[data.kind] as (ask: unknown) => unknown)(data.ask) };
  } catch (error) {
    reply = { id: data.id, failed: error instanceof Error ? error.message : String(error) };
  }
  // Read by `npm run bench -- browser`.
  performance.measure(data.kind, { start });
  self.postMessage(reply);
};
