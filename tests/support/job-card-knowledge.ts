import { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { noWords } from "./no-words.ts";
import { plainCosts } from "./plain-costs.ts";
import { plainLimits } from "./plain-limits.ts";
import { plainOrders } from "./plain-orders.ts";
import { plainDoubt } from "./plain-doubt.ts";
import { plainShares } from "./plain-shares.ts";

const weight = (p: number) => ({ p, spread: 0.5, basis: "common-practice" });
const corners = ["front-left", "front-right"];

/**
 * A small invented knowledge for the job card: a joint and a link at the front corners, a rack on the axle.
 *
 * Parsed by the schema, so that a change of the form shows here first.
 */
export const jobCardKnowledge: Knowledge = Knowledge.parse({
  schemaVersion: 1,
  version: "0.9.0",
  scale: { basis: "common-practice", about: "words", words: { often: { p: 0.7, spread: 0.5 } } },
  places: {
    places: [
      { id: "front-left", name: "front left", short: "FL", side: "left", axle: "front", within: ["front"] },
      {
        id: "front-right",
        name: "front right",
        short: "FR",
        side: "right",
        axle: "front",
        within: ["front"],
      },
      { id: "front", name: "front axle", short: "F", side: "none", axle: "front", within: [] },
    ],
    sets: { "front-corners": corners, "front-axle": ["front"] },
  },
  car: {
    attributes: [
      {
        id: "odometer",
        path: "odometerKm",
        name: "Odometer",
        kind: "number",
        unit: "km",
        min: 0,
        max: 1e6,
        typical: 1e5,
        basis: "common-practice",
      },
    ],
    kmPerYear: { value: 13000, basis: "common-practice" },
    stands: { km: 12000, years: 1, basis: "common-practice" },
  },
  setUps: {
    setUps: [{ id: "standing", name: "standing on its wheels", about: "On level ground.", needs: "nothing" }],
    minutes: { standing: { standing: 0 } },
    start: "standing",
    basis: "common-practice",
  },
  reports: {
    reliability: 0.8,
    falseAlarm: 0.05,
    features: 0.85,
    questionMinutes: 0.5,
    basis: "common-practice",
  },
  groups: {
    groups: [{ id: "moment", name: "moments", temper: 0.5 }],
    unlisted: 0.5,
    basis: "common-practice",
  },
  words: noWords,
  costs: plainCosts,
  orders: plainOrders("play"),
  limits: plainLimits("play"),
  publishedShares: plainShares("joint"),
  doubt: plainDoubt(),
  parts: [
    { id: "joint", name: "lower ball joint", about: "Carries the corner.", group: "joints", places: corners },
    { id: "link", name: "anti-roll bar link", about: "Ties the bar.", group: "bar", places: corners },
    { id: "nut", name: "pinch bolt", about: "Clamps the joint.", group: "joints", places: corners },
    { id: "rack", name: "steering rack", about: "Steers.", group: "steering", places: ["front"] },
  ],
  faults: [
    {
      id: "joint-worn",
      part: "joint",
      name: "worn, with play",
      kind: "worn",
      life: { km: 180000, shape: 2.5 },
      shows: [{ complaint: "noise", strength: weight(0.7), features: { "small-bumps": 0.8 } }],
      links: [
        { observation: "play", levels: [weight(0.8), weight(0.5)] },
        { observation: "boot-torn", levels: [weight(0.4)] },
      ],
      decisive: [{ observation: "play", level: 1 }],
      severity: {
        word: "dangerous",
        item: "5.3.4 b",
        reason: "It can come apart and the wheel fold under.",
        basis: "directive",
      },
      stop: { from: 0.3, say: "Do not drive it; have it recovered." },
      remedy: {
        work: "Renew the ball joint and measure the seat of its taper.",
        minutes: 60,
        paired: [
          { part: "nut", where: "same-place", why: "It is stretched once." },
          { part: "joint", where: "other-side", why: "It has run as far." },
        ],
        oneUse: ["pinch bolt and nut"],
        tightenAtRideHeight: true,
        alignment: true,
        cautions: ["support"],
      },
    },
    {
      id: "link-worn",
      part: "link",
      name: "worn, rattles",
      kind: "worn",
      life: { km: 120000, shape: 2 },
      shows: [{ complaint: "noise", strength: weight(0.8), features: {} }],
      links: [{ observation: "link-play", levels: [weight(0.9)] }],
      decisive: [{ observation: "link-play", level: 0 }],
      severity: { word: "minor", reason: "It only rattles.", basis: "common-practice" },
      remedy: {
        work: "Renew both links.",
        minutes: 30,
        paired: [{ part: "link", where: "both-sides", why: "They wear alike." }],
        cautions: ["support"],
      },
    },
  ],
  complaints: [
    { id: "noise", name: "noise", aspect: "sound", question: "Does it make a noise?", leak: 0.01 },
    { id: "pull", name: "pull to one side", aspect: "handling", question: "Does it pull?", leak: 0.01 },
  ],
  features: [
    {
      id: "small-bumps",
      name: "over small sharp bumps",
      kind: "moment",
      group: "moment",
      complaints: ["noise"],
      background: 0.3,
      unlisted: 0.1,
      question: "Over small bumps?",
    },
  ],
  observations: [
    {
      id: "play",
      name: "play in the ball joint",
      at: "front-corners",
      levels: ["slight", "clear"],
      leak: [0.02, 0.001],
      measure: { quantity: "movement at the tread", unit: "mm", atLeast: [1, 6], basis: "common-practice" },
      places: corners,
    },
    {
      id: "boot-torn",
      name: "boot torn",
      at: "front-corners",
      levels: ["present"],
      leak: [0.01],
      places: corners,
    },
    {
      id: "link-play",
      name: "play in the link",
      at: "front-corners",
      levels: ["present"],
      leak: [0.01],
      places: corners,
    },
  ],
  contexts: [{ id: "kerb-strike", name: "hit a kerb lately", question: "Hit a kerb?", share: 0.05 }],
  checks: [
    {
      id: "lever-joint",
      name: "lever the ball joint",
      at: "front-corners",
      setUp: "standing",
      minutes: 3,
      who: "technician",
      does: ["lifts"],
      settles: ["play"],
      steps: ["Lever the joint."],
      cautions: ["support"],
      normal: "No movement.",
      places: corners,
    },
  ],
  cautions: [{ id: "support", text: "Rest the car on stands before a hand goes under.", covers: ["lifts"] }],
  sources: [
    {
      id: "common-practice",
      title: "Common practice, no source",
      kind: "none",
      where: "the trade",
      status: "none",
    },
    {
      id: "directive",
      title: "Directive 2014/45/EU",
      kind: "regulation",
      where: "Annex I",
      status: "memory",
    },
  ],
  layouts: [],
  demoCases: [],
});
