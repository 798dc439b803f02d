import { compileKnowledge } from "../../lib/knowledge/compile.ts";
import { readKnowledge } from "../../lib/knowledge/read.ts";
import type { Authored } from "../../lib/knowledge/schema/authored.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { noWords } from "./no-words.ts";
import { plainCosts } from "./plain-costs.ts";
import { plainLimits } from "./plain-limits.ts";
import { plainOrders } from "./plain-orders.ts";
import { plainAdvice } from "./plain-advice.ts";
import { plainDoubt } from "./plain-doubt.ts";
import { plainLay } from "./plain-lay.ts";
import { plainShares } from "./plain-shares.ts";

/** Records by their path in the knowledge folder, before they become text. */
export type TinyRecords = Record<string, Record<string, unknown>>;

/** What a test does to the records before they are read. */
export type TinyChange = (records: TinyRecords) => void;

/** An invented knowledge, as small as one can be that the lint is content with: three parts, one complaint. */
export function tinyRecords(): TinyRecords {
  return { ...vocabulary(), ...findings(), ...partsAndFaults() };
}

/** The tiny knowledge as the files that the reader takes. */
export function tinyFiles(change: TinyChange = () => {}): Map<string, string> {
  const records = tinyRecords();
  change(records);
  return new Map(Object.entries(records).map(([path, record]) => [path, JSON.stringify(record)]));
}

/** The tiny knowledge read and compiled. */
export function tinyKnowledge(change: TinyChange = () => {}): { authored: Authored; knowledge: Knowledge } {
  const authored = readKnowledge(tinyFiles(change));
  return { authored, knowledge: compileKnowledge(authored) };
}

/** Put fields over those of one record; a field given as undefined is left out. */
export function patch(records: TinyRecords, path: string, fields: Record<string, unknown>): void {
  const record = records[path];
  if (record === undefined) throw new Error(`the tiny knowledge has no ${path}`);
  records[path] = { ...record, ...fields };
}

function vocabulary(): TinyRecords {
  const basis = "common-practice";
  return {
    "manifest.json": { schemaVersion: 1, version: "0.1.0", about: "Three invented parts." },
    "scale.json": {
      basis,
      about: "Three words.",
      words: {
        often: { p: 0.6, spread: 0.4 },
        usually: { p: 0.75, spread: 0.4 },
        rarely: { p: 0.07, spread: 0.6 },
      },
    },
    "places.json": {
      places: [
        {
          id: "front-left",
          name: "front left",
          short: "FL",
          side: "left",
          axle: "front",
          within: ["front", "car"],
        },
        {
          id: "front-right",
          name: "front right",
          short: "FR",
          side: "right",
          axle: "front",
          within: ["front", "car"],
        },
        { id: "front", name: "front axle", short: "F", side: "none", axle: "front", within: ["car"] },
        { id: "car", name: "whole car", short: "car", side: "none", axle: "none" },
      ],
      sets: { "front-corners": ["front-right", "front-left"], "front-axle": ["front"], car: ["car"] },
    },
    "car.json": {
      attributes: [
        {
          id: "layout",
          path: "front.layout",
          name: "Front suspension",
          kind: "choice",
          values: [
            { id: "strut", name: "strut", share: 0.8 },
            { id: "wishbone", name: "wishbone", share: 0.2 },
          ],
          basis,
        },
        {
          id: "odometer",
          path: "odometerKm",
          name: "Odometer",
          kind: "number",
          unit: "km",
          min: 0,
          max: 1e6,
          typical: 130000,
          basis,
        },
        {
          id: "age",
          path: "ageYears",
          name: "Age",
          kind: "number",
          unit: "years",
          min: 0,
          max: 80,
          typical: 10,
          basis,
        },
      ],
      kmPerYear: { value: 13000, basis },
      stands: { km: 12000, years: 1, basis },
    },
    "set-ups.json": {
      setUps: [
        { id: "standing", name: "standing", about: "On its wheels.", needs: "nothing" },
        { id: "road", name: "on the road", about: "Driven.", needs: "road" },
        { id: "hanging", name: "raised", about: "Wheels hanging.", needs: "lift" },
      ],
      minutes: {
        standing: { standing: 0, road: 3, hanging: 4 },
        road: { standing: 2, road: 0, hanging: 5 },
        hanging: { standing: 3, road: 6, hanging: 0 },
      },
      start: "standing",
      basis,
    },
    "reports.json": { reliability: 0.75, falseAlarm: 0.02, questionMinutes: 0.5, features: 0.8, basis },
    "groups.json": {
      groups: [
        { id: "bumps", name: "bumps", temper: 0.6 },
        { id: "where", name: "where", temper: 0.5 },
      ],
      unlisted: 0.5,
      basis,
    },
    "costs.json": plainCosts,
    "orders.json": plainOrders("link-play"),
    "limits.json": plainLimits("joint-play"),
    "published-shares.json": plainShares("ball-joint"),
    "doubt.json": { ...plainDoubt() },
    "advice.json": { ...plainAdvice() },
    "lay.json": { ...plainLay() },
    "words.json": {
      ...noWords,
      negators: ["not", "no"],
      sides: { front: "from-front", rear: "from-rear", left: "from-left", right: "from-right" },
    },
    "sources/common-practice.json": {
      id: "common-practice",
      title: "Common practice, no source",
      kind: "none",
      where: "the trade",
      status: "none",
    },
    "sources/annex.json": {
      id: "annex",
      title: "An invented annex",
      kind: "regulation",
      where: "nowhere",
      status: "memory",
    },
    "cautions/raise.json": { id: "raise", text: "Raise and support it.", covers: ["lifts"] },
    "cautions/pry.json": { id: "pry", text: "Pry gently.", covers: ["loads"] },
    "contexts/kerb-strike.json": {
      id: "kerb-strike",
      name: "hit a kerb",
      question: "Did a wheel hit a kerb?",
      lay: { question: "Did a wheel hit the kerb?" },
      share: 0.03,
    },
    "profiles/bump-knock.json": {
      id: "bump-knock",
      name: "knock over bumps",
      about: "Small bumps.",
      features: { "small-bumps": "usually" },
    },
    "layouts/strut.json": {
      id: "strut",
      name: "strut",
      axle: "front",
      attribute: "strut",
      shapes: [
        {
          parts: ["bar-link"],
          kind: "line",
          points: [
            [-50, 0],
            [-40, 10],
          ],
        },
      ],
    },
    "layouts/wishbone.json": {
      id: "wishbone",
      name: "wishbone",
      axle: "front",
      attribute: "wishbone",
      shapes: [{ parts: ["ball-joint"], kind: "spot", points: [[-60, -80]] }],
    },
    "demo-cases/first.json": {
      id: "first",
      title: "A knock",
      customer: "an invented customer",
      vehicle: "an invented car",
      plate: "DEMO 1",
      car: { front: { layout: "strut" } },
      text: "It knocks.",
      about: "The link.",
      truth: { fault: "bar-link-worn", place: "front-left" },
    },
    "worked-cases/knock.json": {
      id: "knock",
      title: "A knock over small bumps",
      about: "Invented. The link moves by hand.",
      car: { front: { layout: "strut" } },
      findings: [{ id: "noise" }, { id: "noise:small-bumps" }, { id: "link-play@front-left", by: "check" }],
      truth: { fault: "bar-link-worn", place: "front-left" },
    },
  };
}

function findings(): TinyRecords {
  const side = (id: string, name: string, opposite: string) => ({
    id,
    name,
    kind: "where",
    group: "where",
    complaints: ["noise"],
    background: 0.4,
    question: `Does it seem to come from the ${name}?`,
    lay: { question: `Is it at the ${name}?`, choice: `at the ${name}` },
    opposite,
  });
  return {
    "complaints/noise.json": {
      id: "noise",
      name: "a noise",
      aspect: "sound",
      question: "Is there a noise?",
      lay: { question: "Do you hear a noise?", choice: "it makes a noise" },
      phrases: ["knock|knocks"],
      leak: 0.02,
    },
    "features/small-bumps.json": {
      id: "small-bumps",
      name: "over small bumps",
      kind: "moment",
      group: "bumps",
      complaints: ["noise"],
      background: 0.3,
      question: "Does it come over small bumps?",
      lay: { question: "Does it come over small bumps?" },
    },
    "features/from-front.json": {
      ...side("from-front", "front", "from-rear"),
      relative: { front: "same-end", rear: "other-end" },
      defaults: { "same-end": 0.7, "other-end": 0.1 },
    },
    "features/from-rear.json": {
      ...side("from-rear", "rear", "from-front"),
      relative: { rear: "same-end", front: "other-end" },
      defaults: { "same-end": 0.7, "other-end": 0.1 },
    },
    "features/from-left.json": {
      ...side("from-left", "left", "from-right"),
      mirror: "from-right",
      relative: { left: "same-side", right: "other-side" },
      defaults: { "same-side": 0.7, "other-side": 0.2 },
    },
    "features/from-right.json": {
      ...side("from-right", "right", "from-left"),
      mirror: "from-left",
      relative: { right: "same-side", left: "other-side" },
      defaults: { "same-side": 0.7, "other-side": 0.2 },
    },
    "observations/link-play.json": {
      id: "link-play",
      name: "play in the bar link",
      at: "front-corners",
      leak: 0.002,
    },
    "observations/joint-play.json": {
      id: "joint-play",
      name: "play in the ball joint",
      at: "front-corners",
      levels: ["slight", "clear"],
      measure: { quantity: "movement", unit: "mm", atLeast: [0.5, 2], basis: "common-practice" },
      leak: [0.02, 0.002],
    },
    "observations/rack-play.json": {
      id: "rack-play",
      name: "play in the rack",
      at: "front-axle",
      leak: 0.003,
    },
    "checks/feel-link.json": check(
      "feel-link",
      "feel the bar link",
      "front-corners",
      ["link-play"],
      ["lifts"],
    ),
    "checks/pry-joint.json": {
      ...check("pry-joint", "pry the ball joint", "front-corners", ["joint-play"], ["lifts", "loads"]),
      cautions: ["raise", "pry"],
    },
    "checks/watch-rack.json": {
      ...check("watch-rack", "watch the rack", "front-axle", ["rack-play"], []),
      setUp: "standing",
      cautions: [],
    },
  };
}

function check(id: string, name: string, at: string, settles: string[], does: string[]) {
  return {
    id,
    name,
    at,
    setUp: "hanging",
    minutes: 3,
    who: "technician",
    does,
    settles,
    steps: ["Look and feel."],
    cautions: ["raise"],
    normal: "Nothing moves.",
  };
}

function partsAndFaults(): TinyRecords {
  const remedy = { work: "Renew it.", minutes: 30 };
  const shows = [{ complaint: "noise", strength: "usually", profile: "bump-knock" }];
  return {
    "parts/bar-link.json": {
      id: "bar-link",
      name: "bar link",
      otherNames: ["drop link"],
      about: "Joins bar and strut.",
      group: "suspension",
      at: "front-corners",
      when: { "==": [{ var: "front.layout" }, "strut"] },
    },
    "parts/ball-joint.json": {
      id: "ball-joint",
      name: "ball joint",
      about: "Lets the carrier turn.",
      group: "suspension",
      at: ["front-corners"],
    },
    "parts/rack.json": {
      id: "rack",
      name: "steering rack",
      about: "Steers.",
      group: "steering",
      at: "front-axle",
    },
    "faults/bar-link-worn.json": {
      id: "bar-link-worn",
      part: "bar-link",
      name: "worn",
      kind: "worn",
      life: { km: 120000, shape: 2.5 },
      modifiers: [{ when: { "==": [{ var: "front.layout" }, "strut"] }, life: 0.9, why: "invented" }],
      contexts: { "kerb-strike": 1.5 },
      shows,
      links: { "link-play": "usually" },
      decisive: ["link-play"],
      severity: { word: "minor", reason: "It only knocks.", basis: "common-practice" },
      remedy: { ...remedy, paired: [{ part: "bar-link", where: "other-side", why: "Same age." }] },
    },
    "faults/ball-joint-worn.json": {
      id: "ball-joint-worn",
      part: "ball-joint",
      name: "worn",
      kind: "worn",
      life: { share: 0.03 },
      shows: [{ complaint: "noise", strength: 0.4, features: { "small-bumps": { s: "often", spread: 1 } } }],
      links: { "joint-play": { levels: ["usually", "often"], basis: "annex" } },
      decisive: ["joint-play:clear"],
      severity: { word: "dangerous", item: "5.3.4 a", reason: "It can come apart.", basis: "annex" },
      stop: { from: 0.3, say: "Do not drive it; have it recovered." },
      remedy,
    },
    "faults/rack-worn.json": {
      id: "rack-worn",
      part: "rack",
      name: "worn",
      kind: "worn",
      life: { years: 20, shape: 2 },
      shows,
      links: { "rack-play": { s: 0.8, basis: "annex" } },
      decisive: ["rack-play"],
      severity: { word: "major", reason: "Play at the wheel.", basis: "common-practice" },
      remedy,
    },
  };
}
