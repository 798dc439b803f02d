import type { Authored } from "./schema/authored.ts";
import type { Strength } from "./schema/common.ts";
import { wordOf } from "./strengths.ts";

/** Kinds of thing that a record may name. */
export type ReferenceKind =
  | "part"
  | "fault"
  | "complaint"
  | "feature"
  | "feature or relative key"
  | "observation"
  | "context"
  | "profile"
  | "check"
  | "caution"
  | "source"
  | "place"
  | "place set"
  | "set-up"
  | "feature group"
  | "frequency word"
  | "price band"
  | "share group"
  | "share fleet"
  | "picture";

/** One naming of one thing by one record. */
export interface Reference {
  readonly file: string;
  readonly path: string;
  readonly kind: ReferenceKind;
  readonly id: string;
}

/** Every naming of a record by another, in the order of the files. */
export function referencesOf(authored: Authored): Reference[] {
  const found: Reference[] = [];
  const from = (file: string) => (kind: ReferenceKind, path: string, id: string | undefined) => {
    if (id !== undefined) found.push({ file, path, kind, id });
  };
  singleFiles(authored, from);
  for (const part of authored.parts) {
    const say = from(`parts/${part.id}.json`);
    for (const set of [part.at].flat()) say("place set", "at", set);
  }
  for (const fault of authored.faults) faultReferences(fault, from(`faults/${fault.id}.json`));
  for (const complaint of authored.complaints) {
    const say = from(`complaints/${complaint.id}.json`);
    say("source", "basis", complaint.basis);
    say("picture", "lay.picture", complaint.lay?.picture);
  }
  for (const context of authored.contexts) {
    from(`contexts/${context.id}.json`)("picture", "lay.picture", context.lay?.picture);
  }
  for (const feature of authored.features) {
    const say = from(`features/${feature.id}.json`);
    say("feature group", "group", feature.group);
    feature.complaints.forEach((id, i) => {
      say("complaint", `complaints.${i}`, id);
    });
    say("feature", "opposite", feature.opposite);
    say("feature", "mirror", feature.mirror);
    say("picture", "lay.picture", feature.lay?.picture);
    for (const id of feature.lay?.unless?.said ?? []) say("feature", "lay.unless.said", id);
    for (const id of feature.lay?.unless?.denied ?? []) say("feature", "lay.unless.denied", id);
  }
  for (const observation of authored.observations) {
    const say = from(`observations/${observation.id}.json`);
    say("place set", "at", observation.at);
    say("source", "measure.basis", observation.measure?.basis);
    say("source", "basis", observation.basis);
  }
  for (const profile of authored.profiles) {
    strengths(profile.features, "features", from(`profiles/${profile.id}.json`));
  }
  for (const check of authored.checks) {
    const say = from(`checks/${check.id}.json`);
    say("place set", "at", check.at);
    say("set-up", "setUp", check.setUp);
    for (const id of check.settles) say("observation", "settles", id);
    for (const id of check.cautions) say("caution", "cautions", id);
    for (const id of check.notWhen) say("observation", "notWhen", id);
    say("source", "basis", check.basis);
    say("picture", "lay.picture", check.lay?.picture);
    for (const id of check.lay?.settles ?? []) say("observation", "lay.settles", id);
  }
  for (const layout of authored.layouts) {
    const say = from(`layouts/${layout.id}.json`);
    layout.shapes.forEach((shape, i) => {
      for (const id of shape.parts) say("part", `shapes.${i}.parts`, id);
    });
  }
  for (const demo of authored.demoCases) {
    const say = from(`demo-cases/${demo.id}.json`);
    say("fault", "truth.fault", demo.truth.fault);
    say("place", "truth.place", demo.truth.place);
  }
  for (const worked of authored.workedCases)
    workedCaseReferences(authored, worked, from(`worked-cases/${worked.id}.json`));
  return found;
}

type Say = (kind: ReferenceKind, path: string, id: string | undefined) => void;

function faultReferences(fault: Authored["faults"][number], say: Say): void {
  say("part", "part", fault.part);
  say("source", "basis", fault.basis);
  say("source", "life.basis", fault.life.basis);
  say("source", "severity.basis", fault.severity.basis);
  for (const id of Object.keys(fault.contexts)) say("context", `contexts.${id}`, id);
  fault.shows.forEach((showing, i) => {
    say("complaint", `shows.${i}.complaint`, showing.complaint);
    say("profile", `shows.${i}.profile`, showing.profile);
    say("source", `shows.${i}.basis`, showing.basis);
    strength(showing.strength, `shows.${i}.strength`, say);
    strengths(showing.features, `shows.${i}.features`, say);
  });
  for (const [id, link] of Object.entries(fault.links)) {
    say("observation", `links.${id}`, id);
    if (typeof link === "object" && "levels" in link) {
      say("source", `links.${id}.basis`, link.basis);
      for (const level of link.levels) strength(level, `links.${id}.levels`, say);
    } else strength(link, `links.${id}`, say);
  }
  fault.decisive.forEach((entry, i) => {
    say("observation", `decisive.${i}`, entry.split(":")[0]);
  });
  fault.remedy.paired.forEach((pair, i) => {
    say("part", `remedy.paired.${i}.part`, pair.part);
  });
  for (const id of fault.remedy.cautions) say("caution", "remedy.cautions", id);
  fault.inseparable.forEach((other, i) => {
    say("fault", `inseparable.${i}.fault`, other.fault);
  });
}

function workedCaseReferences(authored: Authored, worked: Authored["workedCases"][number], say: Say): void {
  say("fault", "truth.fault", worked.truth.fault);
  say("place", "truth.place", worked.truth.place);
  const contexts = new Set(authored.contexts.map((context) => context.id));
  worked.findings.forEach(({ id }, i) => {
    const at = `findings.${i}`;
    const [complaint = "", feature] = id.split(":");
    const [observation, place] = id.split("@");
    if (feature !== undefined) say("feature", at, feature);
    if (place === undefined) say(contexts.has(complaint) ? "context" : "complaint", at, complaint);
    else {
      say("observation", at, observation);
      say("place", at, place);
    }
  });
}

function singleFiles(authored: Authored, from: (file: string) => Say): void {
  from("scale.json")("source", "basis", authored.scale.basis);
  from("reports.json")("source", "basis", authored.reports.basis);
  from("groups.json")("source", "basis", authored.groups.basis);
  costReferences(authored.costs, from("costs.json"));
  const orders = from("orders.json");
  authored.orders.findings.forEach((finding, i) => {
    orders("observation", `findings.${i}.observation`, finding.observation);
    orders("source", `findings.${i}.basis`, finding.basis);
  });
  const limits = from("limits.json");
  authored.limits.quantities.forEach((quantity, i) => {
    limits("observation", `quantities.${i}.observation`, quantity.observation);
  });
  authored.limits.limits.forEach((limit, i) => {
    limits("source", `limits.${i}.basis`, limit.basis);
  });
  const doubt = from("doubt.json");
  for (const [field, { basis }] of Object.entries(authored.doubt.spreads)) {
    doubt("source", `spreads.${field}.basis`, basis);
  }
  doubt("source", "misread.basis", authored.doubt.misread.basis);
  doubt("source", "lookAgain.basis", authored.doubt.lookAgain.basis);
  from("advice.json")("source", "ready.basis", authored.advice.ready.basis);
  layReferences(authored.lay, from("lay.json"));
  shareReferences(authored.publishedShares, from("published-shares.json"));
  const words = from("words.json");
  for (const id of authored.words.only.rulesOut) words("feature", "only.rulesOut", id);
  for (const [facet, id] of Object.entries(authored.words.sides)) words("feature", `sides.${facet}`, id);
  const car = from("car.json");
  authored.car.attributes.forEach((attribute, i) => {
    car("source", `attributes.${i}.basis`, attribute.basis);
  });
  car("source", "kmPerYear.basis", authored.car.kmPerYear.basis);
  const { stands } = authored.car;
  car("source", "stands.basis", stands.basis);
  car("source", "stands.byAge.basis", stands.byAge?.basis);
  const places = from("places.json");
  authored.places.places.forEach((place, i) => {
    for (const id of place.within) places("place", `places.${i}.within`, id);
  });
  for (const [set, ids] of Object.entries(authored.places.sets)) {
    for (const id of ids) places("place", `sets.${set}`, id);
  }
  const setUps = from("set-ups.json");
  setUps("source", "basis", authored.setUps.basis);
  setUps("set-up", "start", authored.setUps.start);
  for (const [start, row] of Object.entries(authored.setUps.minutes)) {
    setUps("set-up", "minutes", start);
    for (const end of Object.keys(row)) setUps("set-up", `minutes.${start}`, end);
  }
}

function layReferences(lay: Authored["lay"], say: Say): void {
  say("picture", "first.picture", lay.first.picture);
  lay.together.forEach((together, i) => {
    say("picture", `together.${i}.picture`, together.picture);
    for (const id of together.features) say("feature", `together.${i}.features`, id);
  });
  for (const id of Object.keys(lay.places)) say("place", `places.${id}`, id);
}

function shareReferences(shares: Authored["publishedShares"], say: Say): void {
  shares.fleets.forEach((fleet, i) => {
    say("source", `fleets.${i}.basis`, fleet.basis);
  });
  shares.found.forEach((found, i) => {
    for (const fault of found.faults ?? []) say("fault", `found.${i}.faults`, fault);
    say("source", `found.${i}.basis`, found.basis);
  });
  shares.groups.forEach((group, i) => {
    for (const part of group.parts) say("part", `groups.${i}.parts`, part);
    for (const part of group.exceptParts) say("part", `groups.${i}.exceptParts`, part);
  });
  shares.rows.forEach((row, i) => {
    say("share group", `rows.${i}.group`, row.group);
    say("share group", `rows.${i}.against.group`, row.against?.group);
    say("share fleet", `rows.${i}.fleet`, row.fleet);
    say("source", `rows.${i}.basis`, row.basis);
  });
}

function costReferences(costs: Authored["costs"], say: Say): void {
  say("source", "basis", costs.basis);
  for (const field of ["byKind", "byPart", "byGroup"] as const) {
    for (const [key, band] of Object.entries(costs[field])) {
      if (field === "byPart") say("part", field, key);
      say("price band", `${field}.${key}`, band);
    }
  }
  say("price band", "otherwise", costs.otherwise);
}

function strengths(features: Readonly<Record<string, Strength>>, path: string, say: Say): void {
  for (const [key, value] of Object.entries(features)) {
    say("feature or relative key", `${path}.${key}`, key);
    strength(value, `${path}.${key}`, say);
  }
}

function strength(value: Strength, path: string, say: Say): void {
  say("frequency word", path, wordOf(value));
  if (typeof value === "object") say("source", path, value.basis);
}
