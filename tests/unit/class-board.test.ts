import { describe, expect, test } from "vitest";
import { type BoardAttempt, classBoard, type KeptResult, type KeptStep } from "../../lib/training/index.ts";

/* Every expected figure is added up by hand from the table of attempts; the sums stand beside it. */

const step = (fields: Partial<KeptStep> & Pick<KeptStep, "check">): KeptStep => ({
  minutes: 5,
  setUpMinutes: 0,
  lost: 0,
  repeated: false,
  afterProof: false,
  unsafe: false,
  cautionSkipped: false,
  ...fields,
});

const result = (
  score: Partial<KeptResult["score"]>,
  confidence: number,
  steps: readonly KeptStep[] = [],
  next?: string,
): KeptResult => ({
  score: {
    right: true,
    rightPart: true,
    complete: true,
    minutes: 0,
    bestMinutes: 0,
    lostMinutes: 0,
    wrongParts: [],
    unsafe: [],
    cautionsSkipped: [],
    jumped: false,
    afterProof: 0,
    // Brier 1950: squared distance of what was stated from what came.
    brier: (confidence - (score.right === false ? 0 : 1)) ** 2,
    ...score,
  },
  verdict: { suspects: [], confidence },
  steps,
  ...(next !== undefined && { next }),
});

const KNOCK = { id: "e1", name: "A knock (invented)" };
const PULL = { id: "e2", name: "A pull (invented)" };
const TOM = { id: "tom", name: "Tom" };
/** Typed; nobody's account. */
const TILDA = { id: null, name: "Tilda" };

const attempts: BoardAttempt[] = [
  {
    exercise: KNOCK,
    trainee: TOM,
    result: result({ minutes: 30, bestMinutes: 12, lostMinutes: 14, cautionsSkipped: ["b@rear"] }, 0.8, [
      // Four of the seven minutes lost are no more than its set-up took, three are the check itself.
      step({ check: "a@front", minutes: 12, setUpMinutes: 4, lost: 7, best: "x@front" }),
      step({ check: "ask:noise:cold", minutes: 1, lost: 1, best: "x@front" }),
      step({ check: "b@rear", lost: 2, best: "y@rear", afterProof: true }),
      step({ check: "a@front", setUpMinutes: 4, lost: 4, best: "y@rear", repeated: true, afterProof: true }),
      // Made in the end, so that it was not overlooked.
      step({ check: "y@rear", best: "y@rear" }),
    ]),
  },
  {
    exercise: PULL,
    trainee: TOM,
    result: result(
      {
        right: false,
        rightPart: true,
        complete: false,
        jumped: true,
        minutes: 5,
        bestMinutes: 9,
        lostMinutes: 3,
        wrongParts: ["p@rear", "q@rear"],
        unsafe: ["a@front"],
      },
      0.6,
      [step({ check: "a@front", lost: 3, best: "x@front" })],
      "z@front",
    ),
  },
  { exercise: KNOCK, trainee: TILDA, result: result({ minutes: 12, bestMinutes: 12 }, 0.5) },
  { exercise: KNOCK, trainee: TILDA, result: undefined },
];

describe("a class on the board", () => {
  const board = classBoard(attempts);

  test("is added up over the attempts that have ended", () => {
    expect(board.total).toEqual({
      attempts: 4,
      ended: 3,
      right: 2,
      rightPart: 3,
      complete: 2,
      // 30 + 5 + 12, 12 + 9 + 12, 14 + 3 + 0
      minutes: 47,
      bestMinutes: 33,
      lostMinutes: 17,
      wrongParts: 2,
      unsafe: 1,
      cautionsSkipped: 1,
      jumped: 1,
      // (0.8 + 0.6 + 0.5) / 3, (0.04 + 0.36 + 0.25) / 3
      confidence: expect.closeTo(0.633333, 6),
      brier: expect.closeTo(0.216667, 6),
    });
  });

  test("is told by trainee and by exercise, in the order of their names", () => {
    const of = ({ name, attempts: all, ended, right, brier }: (typeof board.trainees)[number]) => [
      name,
      all,
      ended,
      right,
      Number(brier?.toFixed(4)),
    ];
    expect(board.trainees.map(of)).toEqual([
      ["Tilda", 2, 1, 1, 0.25],
      // (0.04 + 0.36) / 2
      ["Tom", 2, 2, 1, 0.2],
    ]);
    expect(board.exercises.map(({ id, attempts: all, lostMinutes }) => [id, all, lostMinutes])).toEqual([
      ["e1", 3, 14],
      ["e2", 1, 3],
    ]);
  });

  test("names what the best choice would have done and nobody did in the attempt", () => {
    expect(board.overlooked).toEqual([
      // (7 + 1) in the first attempt, 3 in the second.
      { check: "x@front", attempts: 2, minutes: 11 },
      // The next check of a verdict that came too early: no minutes, but the proof.
      { check: "z@front", attempts: 1, minutes: 0 },
    ]);
  });

  test("says where minutes go, each once", () => {
    expect(board.costly).toEqual([
      // 7 + 4 in the first attempt, 3 in the second.
      { check: "a@front", attempts: 2, minutes: 14 },
      { check: "b@rear", attempts: 1, minutes: 2 },
      { check: "ask:noise:cold", attempts: 1, minutes: 1 },
    ]);
    // What was known already comes before what came after the proof; the check's share is 3 + 3.
    expect(board.lostIn).toEqual({ repeated: 4, afterProof: 2, setUp: 4, question: 1, check: 6 });
  });

  test("does not go by the order in which attempts come", () => {
    // Sums of figures that are no binary fractions differ in their last digit with the order.
    const rounded = (of: unknown): unknown =>
      JSON.parse(JSON.stringify(of, (_, v: unknown) => (typeof v === "number" ? Number(v.toFixed(9)) : v)));
    expect(rounded(classBoard([...attempts].reverse()))).toEqual(rounded(board));
  });

  test("keeps a typed name and an account of that name apart", () => {
    const twins = classBoard([
      { exercise: KNOCK, trainee: { id: "tilda", name: "Tilda" }, result: undefined },
      { exercise: KNOCK, trainee: TILDA, result: undefined },
    ]);
    expect(twins.trainees.map(({ id, attempts: all }) => [id, all])).toEqual([
      [null, 1],
      ["tilda", 1],
    ]);
  });

  test("of nobody is empty, without means", () => {
    const none = classBoard([]);
    expect(none.total).toMatchObject({ attempts: 0, ended: 0, confidence: undefined, brier: undefined });
    expect([none.trainees, none.exercises, none.overlooked, none.costly]).toEqual([[], [], [], []]);
  });

  test("counts attempts of before steps were kept in the tallies alone", () => {
    const { score } = result({ minutes: 8, lostMinutes: 6 }, 1);
    const old = classBoard([{ exercise: KNOCK, trainee: TOM, result: { score } }]);
    expect(old).toMatchObject({ withoutSteps: 1, total: { lostMinutes: 6 }, costly: [], overlooked: [] });
  });
});
