import { describe, expect, it } from "vitest";
import { type ReadOptions, readText } from "../../lib/words/index.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

/** International mile, exactly 1.609344 km (international yard and pound agreement, 1959). */
const KM_PER_MILE = 1.609344;

interface Band {
  readonly id: string;
  readonly from: number;
  readonly to: number;
}

const BANDS: readonly Band[] = shippedKnowledge().features.flatMap(({ id, speed }) =>
  speed === undefined ? [] : [{ id, ...speed }],
);

function read(text: string, options: ReadOptions = {}): { present: string[]; absent: string[] } {
  const proposals = readText(shippedKnowledge(), text, options).filter(({ finding }) =>
    BANDS.some((band) => finding === `shake:${band.id}`),
  );
  const of = (state: string) =>
    proposals
      .filter((p) => p.state === state)
      .map((p) => p.finding.slice("shake:".length))
      .sort();
  return { present: of("present"), absent: of("absent") };
}

/** Bands that the interval, in km/h, reaches into by more than half a km/h. */
function bands(from: number, to: number): string[] {
  return BANDS.filter((band) => Math.min(to, band.to) - Math.max(from, band.from) > 0.5)
    .map((band) => band.id)
    .sort();
}

const mph = (value: number) => value * KM_PER_MILE;

describe("speeds", () => {
  it("cover the road speeds without gaps", () => {
    expect(BANDS.length).toBeGreaterThanOrEqual(4);
    const sorted = [...BANDS].sort((a, b) => a.from - b.from);
    expect(sorted[0]?.from).toBe(0);
    for (const [i, band] of sorted.slice(1).entries()) expect(band.from).toBe(sorted[i]?.to);
  });

  it.each([
    ["It shakes between 55 and 65 mph", bands(mph(55), mph(65))],
    ["It shakes at 80-100 km/h", bands(80, 100)],
    ["It shakes from 80 to 100 kph", bands(80, 100)],
    ["It shakes 50 mph to 60 mph", bands(mph(50), mph(60))],
    ["It shakes at 90kmh", bands(90, 90.9)],
    ["It shakes over 60 mph", bands(mph(60), 300)],
    ["It shakes above 120 km/h", bands(120, 300)],
    ["It shakes from about 20 mph", bands(mph(20), 300)],
    ["It shakes from 65 mph upwards", bands(mph(65), 300)],
    ["It shakes at 60 mph and above", bands(mph(60), 300)],
    ["It shakes up to 100 km/h and beyond", bands(100, 300)],
    ["It shakes below 25 km/h", bands(0, 25)],
    ["It shakes up to 50 km/h", bands(0, 50)],
    ["It shakes around 45 km/h", bands(40, 50)],
    ["It shakes at sixty miles an hour", bands(mph(60), mph(60) + 1)],
    ["It shakes at fifty five mph", bands(mph(55), mph(55) + 1)],
    ["It shakes when braking from 95 km/h", bands(94, 96)],
  ])("%s", (text, wanted) => {
    expect(wanted.length).toBeGreaterThan(0);
    expect(read(text).present).toEqual(wanted);
  });

  it("when denied, count only bands that lie within", () => {
    expect(read("It shakes. Nothing below 50 mph.").absent).toEqual(
      bands(0, mph(50)).filter((id) => id !== bands(mph(50), 300)[0]),
    );
    expect(read("It shakes, but not above 105 km/h.").absent).toEqual(bands(110, 300));
  });

  it("without a unit take the one asked for, else that of the text, and are hedged when it is a guess", () => {
    expect(read("It shakes at 70", { speedUnit: "km/h" }).present).toEqual(bands(69, 71));
    expect(read("It shakes at 55", { speedUnit: "mph" }).present).toEqual(bands(mph(55), mph(55) + 1));
    expect(read("It shakes at 95. Never below 60 km/h.").present).toEqual(bands(94, 96));
    const guessed = readText(shippedKnowledge(), "It shakes at 55").filter((p) =>
      p.finding.startsWith("shake:"),
    );
    expect(guessed.length).toBeGreaterThan(0);
    for (const proposal of guessed) expect(proposal.hedged).toBe(true);
  });

  it.each([
    "It shakes. I have had it for 60 weeks.",
    "It shakes at 2000 rpm.",
    "It shakes, 90,000 miles on the clock.",
    "It shakes after about 20 minutes.",
    "It shakes since I paid over 60 pounds for it.",
    "It shakes at 35 psi.",
  ])("are not read from other numbers: %s", (text) => {
    expect(read(text)).toEqual({ present: [], absent: [] });
  });
});
