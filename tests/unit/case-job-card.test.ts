import { describe, expect, it } from "vitest";
import {
  type EntryOf,
  foldCase,
  jobCard,
  type KnownEntry,
  type WeighedForCard,
} from "../../lib/case/index.ts";
import { jobCardKnowledge as knowledge } from "../support/job-card-knowledge.ts";

type Body<E> = E extends KnownEntry ? Omit<E, "id" | "caseId" | "at" | "by"> : never;

function caseOf(...bodies: readonly Body<KnownEntry>[]): KnownEntry[] {
  return bodies.map((body, i) => ({
    ...body,
    id: `e${i}`,
    caseId: "c1",
    at: new Date(Date.UTC(2026, 0, 1, 9, i)).toISOString(),
    by: "ana",
  }));
}

const opened: Body<EntryOf<"opened">> = {
  kind: "opened",
  release: "sha-of-opening",
  knowledgeVersion: "0.9.0",
  car: { odometerKm: 120_000 },
  customer: "Invented Customer",
  vehicle: "invented hatchback",
  plate: "INV 1",
  invented: true,
};
const answer = (
  finding: string,
  state: "present" | "absent" | "unknown",
  more: Partial<Body<EntryOf<"answered">>> = {},
): Body<EntryOf<"answered">> => ({ kind: "answered", finding, state, how: "check", ...more });

const weighed: WeighedForCard = {
  ranking: [
    { suspect: { id: "joint-worn@front-left" }, present: 0.97 },
    { suspect: { id: "link-worn@front-right" }, present: 0.5 },
    { suspect: { id: "link-worn@front-left" }, present: 0.49 },
  ],
  notInKnowledge: 0.02,
  notices: [{ say: "Do not drive it; have it recovered." }],
};

const worked: Body<KnownEntry>[] = [
  opened,
  { kind: "told", text: "It clunks over cobbles." },
  answer("noise", "present", { how: "report" }),
  answer("noise:small-bumps", "present", { how: "report", words: "over cobbles" }),
  answer("kerb-strike", "present", { how: "report" }),
  answer("play@front-left", "present", { value: 7, check: "lever-joint@front-left" }),
  answer("boot-torn@front-left", "present"),
  answer("link-play@front-right", "present"),
  answer("link-play@front-left", "absent"),
  {
    kind: "verdict",
    suspects: ["joint-worn@front-left"],
    proof: ["play@front-left"],
    note: "Seen by both of us.",
  },
];

describe("the job card", () => {
  const card = jobCard(knowledge, foldCase(caseOf(...worked)), weighed, "abc123");

  it("gives the complaint in the customer's words and as it was read", () => {
    expect(card.complaint.words).toEqual(["It clunks over cobbles."]);
    expect(card.complaint.told.map((f) => f.name)).toEqual(["noise", "noise: over small sharp bumps"]);
    expect(card.contexts).toEqual(["hit a kerb lately"]);
  });

  it("lists what was checked with its result, grade, measure and check", () => {
    expect(card.found.map((f) => [f.name, f.state])).toEqual([
      ["play in the ball joint, front left", "present"],
      ["boot torn, front left", "present"],
      ["play in the link, front right", "present"],
      ["play in the link, front left", "absent"],
    ]);
    expect(card.found[0]).toMatchObject({
      level: "clear", // 7 mm is over the 6 mm from which the fixture calls it clear
      measured: "7 mm movement at the tread",
      check: "lever the ball joint",
    });
  });

  it("names the verdict, its proof and who gave it", () => {
    expect(card.verdict).toMatchObject({
      suspects: [{ suspect: "joint-worn@front-left", name: "front left lower ball joint: worn, with play" }],
      proof: [{ finding: "play@front-left" }],
      note: "Seen by both of us.",
      by: "ana",
      unproven: [],
    });
  });

  it("writes out the work: paired parts with place and why, one-use fasteners, ride height, alignment", () => {
    expect(card.work).toHaveLength(1);
    expect(card.work[0]).toMatchObject({
      minutes: 60,
      paired: [
        { part: "pinch bolt", where: "front left", why: "It is stretched once." },
        { part: "lower ball joint", where: "front right", why: "It has run as far." },
      ],
      oneUse: ["pinch bolt and nut"],
      tightenAtRideHeight: true,
      alignmentAfter: true,
    });
    const steps = card.work[0]?.steps.join("\n");
    expect(steps).toMatch(/pinch bolt and nut/);
    expect(steps).toMatch(/ride height/);
    expect(steps).toMatch(/alignment/);
    expect(card.cautions).toEqual(["Rest the car on stands before a hand goes under."]);
    expect(card.workMinutes).toBe(60);
  });

  it("says how grave it is in the Directive's word, with item, reason and basis", () => {
    expect(card.severity).toEqual([
      {
        suspect: "joint-worn@front-left",
        name: "front left lower ball joint: worn, with play",
        word: "dangerous",
        item: "5.3.4 b",
        reason: "It can come apart and the wheel fold under.",
        basis: "Directive 2014/45/EU",
      },
    ]);
    expect(card.stopNotices).toEqual(["Do not drive it; have it recovered."]);
  });

  it("lists what else was found: likely suspects outside the verdict and findings it does not explain", () => {
    expect(card.alsoLikely.map((s) => s.suspect)).toEqual(["link-worn@front-right"]);
    expect(card.unexplained.map((f) => f.finding)).toEqual(["link-play@front-right"]);
  });

  it("names the release and its SHA, and defers to the maker and local rules without any claim", () => {
    expect(card.release).toEqual({ version: "0.9.0", sha: "abc123" });
    expect(card.inventedNotice).toMatch(/invented/i);
    const said = card.statements.join(" ");
    expect(said).toMatch(/maker's data/);
    expect(said).toMatch(/no statement of roadworthiness/);
    expect(JSON.stringify(card)).not.toMatch(/\bsafe\b/i);
  });

  it("is plain data", () => {
    expect(JSON.parse(JSON.stringify(card))).toEqual(card);
  });
});

describe("what stays open on the job card", () => {
  const cardOf = (...bodies: Body<KnownEntry>[]) => jobCard(knowledge, foldCase(caseOf(...bodies)), weighed);

  it("says so when there is no verdict, and then plans no work", () => {
    const card = cardOf(opened);
    expect(card.verdict).toBeUndefined();
    expect(card.work).toEqual([]);
    expect(card.open).toContain("No verdict yet.");
    expect(card.release.sha).toBe("sha-of-opening");
  });

  const joint: Body<KnownEntry> = { kind: "verdict", suspects: ["joint-worn@front-left"], proof: [] };
  const notProven = "Not proven by a decisive check: front left lower ball joint: worn, with play.";

  it.each([
    ["told, not checked", answer("play@front-left", "present", { level: "clear", how: "report" })],
    ["at the other side", answer("play@front-right", "present", { level: "clear" })],
    ["in too low a grade", answer("play@front-left", "present", { level: "slight" })],
    ["measured below the grade", answer("play@front-left", "present", { value: 5.9 })],
    ["absent", answer("play@front-left", "absent")],
    ["somewhere, the place not known", answer("play", "present", { level: "clear" })],
  ])("calls a verdict not proven when the decisive finding was %s", (_why, given) => {
    const card = cardOf(opened, given, joint);
    expect(card.open).toContain(notProven);
    expect(card.verdict?.unproven).toEqual(["front left lower ball joint: worn, with play"]);
  });

  it("calls it proven by the decisive grade at its own corner", () => {
    const card = cardOf(opened, answer("play@front-left", "present", { level: "clear" }), joint);
    expect(card.open).not.toContain(notProven);
  });

  it("drops proof that was retracted after the verdict", () => {
    const entries = caseOf(...worked, { kind: "retracted", entry: "e5" });
    const card = jobCard(knowledge, foldCase(entries), weighed);
    expect(card.verdict?.proof).toEqual([]);
    expect(card.open).toContain(notProven);
  });

  it("names checks not done, complaints not explained, findings not known and causes outside", () => {
    const { open } = jobCard(
      knowledge,
      foldCase(
        caseOf(
          opened,
          answer("pull", "present", { how: "report" }),
          answer("boot-torn@front-right", "unknown"),
          { kind: "not-possible", check: "lever-joint@front-right", reason: "no lift free" },
          joint,
        ),
      ),
      { ...weighed, notInKnowledge: 0.234 },
    );
    expect(open).toContain("Not done: lever the ball joint, front right (no lift free).");
    expect(open).toContain("Complaint that the verdict does not explain: pull to one side.");
    expect(open).toContain("Asked, not known: boot torn, front right.");
    expect(open).toContain("Chance that the cause lies outside this knowledge: 23 in 100.");
  });

  it("says what was advised before the car was seen, parts by name, an unknown level by its id", () => {
    const advised: Body<KnownEntry> = {
      kind: "advised",
      level: "hold",
      said: "Leave it standing.",
      p50: 75,
      parts: ["joint@front-left", "gone@front"],
      note: "By telephone.",
    };
    expect(cardOf(opened, advised).advised).toEqual({
      level: "hold",
      said: "Leave it standing.",
      p50: 75,
      parts: ["front left lower ball joint", "gone@front"],
      note: "By telephone.",
      by: "ana",
      at: "2026-01-01T09:01:00.000Z",
    });
    expect(cardOf(opened).advised).toBeUndefined();
  });

  it("keeps ids that this release does not hold, and says so", () => {
    const card = cardOf({ ...opened, knowledgeVersion: "0.8.0" }, answer("gone@front-left", "present"), {
      kind: "verdict",
      suspects: ["gone-worn@front-left"],
      proof: ["gone@front-left"],
    });
    expect(card.verdict?.suspects).toEqual([
      { suspect: "gone-worn@front-left", name: "gone-worn@front-left" },
    ]);
    expect(card.open).toContain("Named in the verdict but not in this release: gone-worn@front-left.");
    expect(card.open).toContain("Answered but not in this release: gone@front-left.");
    expect(card.open.some((line) => line.includes("0.8.0") && line.includes("0.9.0"))).toBe(true);
  });

  it("warns of a dangerous part in the verdict even when the weighing gives no notice", () => {
    const card = jobCard(knowledge, foldCase(caseOf(opened, joint)), { ...weighed, notices: [] });
    expect(card.stopNotices).toEqual(["Do not drive it; have it recovered."]);
  });
});
