import { describe, expect, it } from "vitest";
import { vibrationOrders } from "../../lib/car/orders.ts";
import { type Running, shaftRates } from "../../lib/car/shaft-rates.ts";
import { parseTyreSize, tyreGeometry } from "../../lib/car/tyre-size.ts";
import { answerOrdersRequest } from "../../lib/requests/orders-request.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

const KM_PER_MILE = 1.609344;
const geometry = (size: string) => tyreGeometry(parseTyreSize(size));

/** Turns a second of the wheel at a speed in mph. */
const hzAt = (size: string, mph: number) =>
  shaftRates({
    circumferenceMm: geometry(size).rollingCircumferenceMm,
    speedKmh: mph * KM_PER_MILE,
  }).wheel;

/** Within a share of a published figure. */
function expectWithin(got: number, wanted: number, share: number): void {
  expect(Math.abs(got / wanted - 1), `${got} against ${wanted}`).toBeLessThanOrEqual(share);
}

/* B-03. Source: published list of tyre diameters, covertitall.com, tire size calculator. */
describe("design diameter", () => {
  it.each([
    ["195/65R15", 635],
    ["205/55R16", 632],
    ["215/60R16", 664],
    ["225/45R17", 634],
    ["235/35R19", 647],
    ["255/40R18", 661],
  ])("%s has the published %i mm", (size, wanted) => {
    expect(geometry(size).designDiameterMm).toBe(wanted);
  });
});

/* B-02. Source: UN Regulation No. 30, nominal rim diameters; from memory. */
describe("rim codes", () => {
  it.each([
    [13, 330],
    [14, 356],
    [15, 381],
    [16, 406],
    [17, 432],
    [18, 457],
    [19, 483],
    [20, 508],
    [21, 533],
  ])("%i is %i mm", (code, wanted) => {
    expect(geometry(`205/55R${code}`).rimMm).toBe(wanted);
  });
});

/* B-05. Source: turns a second at 5 mph in service text for a 2000 saloon and a 2003 saloon (GM Alero, Seville); 1 %. */
describe("wheel turns a second at 5 mph", () => {
  it.each([
    ["P225/50R16", 1.17],
    ["P215/60R15", 1.14],
    ["P235/60R16", 1.065],
    ["P235/75R15", 1.0],
  ])("%s: %d", (size, wanted) => {
    expectWithin(hzAt(size, 5), wanted, 0.01);
  });
});

/* B-06. Source: chart in service text of 2001 and 2010 (Ford Escort, Super Duty): 835 mm tyre, 105 rpm for each 10 mph. */
describe("an 835 mm tyre", () => {
  const rates = (mph: number) =>
    shaftRates({ circumferenceMm: 3.05 * 835, speedKmh: mph * KM_PER_MILE }).wheel;

  it("turns 105 times a minute at 10 mph, 420 times (7 Hz) at 40", () => {
    expectWithin(rates(10) * 60, 105, 0.01);
    expectWithin(rates(40) * 60, 420, 0.01);
    expectWithin(rates(40), 7, 0.01);
  });

  it("is what a flotation size of 33 in gives", () => {
    expectWithin(geometry("33x12.50R15LT").designDiameterMm, 835, 0.01);
  });
});

/* B-07. Source: default ratio of dynamic to nominal radius in the European Commission's fuel model (CO2MPAS): 0.975. */
describe("rolling circumference for each mm of diameter", () => {
  it("lies in the band of published factors, 3.02 to 3.07", () => {
    const { rollingCircumferenceMm, designDiameterMm } = geometry("205/55R16");
    const factor = rollingCircumferenceMm / designDiameterMm;
    expect(factor).toBeGreaterThan(3.02);
    expect(factor).toBeLessThan(3.07);
    expectWithin(factor, 0.975 * Math.PI, 0.01);
  });
});

/* B-10. Source: worked apart from this code from UN R30's diameters (from memory) and 3.05 D (ETRTO, from memory). */
describe("size, H, OD, circumference, turns a km and a mile, Hz at 100 km/h and 60 mph", () => {
  it.each([
    ["155/80R13", 124, 578, 1762.9, 567.2, 912.9, 15.757, 15.215],
    ["165/70R14", 116, 588, 1793.4, 557.6, 897.4, 15.489, 14.956],
    ["175/65R14", 114, 584, 1781.2, 561.4, 903.5, 15.595, 15.059],
    ["185/60R15", 111, 603, 1839.1, 543.7, 875.0, 15.104, 14.584],
    ["185/65R15", 120, 621, 1894.0, 528.0, 849.7, 14.666, 14.161],
    ["195/55R15", 107, 595, 1814.8, 551.0, 886.8, 15.307, 14.78],
    ["195/65R15", 127, 635, 1936.8, 516.3, 831.0, 14.342, 13.849],
    ["205/55R16", 113, 632, 1927.6, 518.8, 834.9, 14.411, 13.915],
    ["205/60R16", 123, 652, 1988.6, 502.9, 809.3, 13.969, 13.488],
    ["215/60R16", 129, 664, 2025.2, 493.8, 794.7, 13.716, 13.244],
    ["215/55R17", 118, 668, 2037.4, 490.8, 789.9, 13.634, 13.165],
    ["225/45R17", 101, 634, 1933.7, 517.1, 832.3, 14.365, 13.871],
    ["225/50R17", 113, 658, 2006.9, 498.3, 801.9, 13.841, 13.365],
    ["235/45R17", 106, 644, 1964.2, 509.1, 819.3, 14.142, 13.656],
    ["225/40R18", 90, 637, 1942.8, 514.7, 828.3, 14.297, 13.806],
    ["245/40R18", 98, 653, 1991.6, 502.1, 808.0, 13.947, 13.467],
    ["235/55R17", 129, 690, 2104.5, 475.2, 764.7, 13.199, 12.745],
    ["235/65R17", 153, 738, 2250.9, 444.3, 715.0, 12.341, 11.916],
    ["255/35R19", 89, 661, 2016.0, 496.0, 798.3, 13.778, 13.304],
  ])("%s", (size, height, diameter, circumference, perKm, perMile, at100, at60) => {
    const found = geometry(size);
    expect(found.sectionHeightMm).toBe(height);
    expect(found.designDiameterMm).toBe(diameter);
    // The last digit of the table: half a unit of it either way, and the rounding of 3.05 x OD itself.
    expect(Math.abs(found.rollingCircumferenceMm - circumference)).toBeLessThan(0.0501);
    const answer = answerOrdersRequest(shippedKnowledge(), { tyre: size, speedKmh: 100 });
    expect(Math.abs(answer.turnsPerKm - perKm)).toBeLessThan(0.0501);
    expect(Math.abs(answer.turnsPerKm * KM_PER_MILE - perMile)).toBeLessThan(0.0501);
    expect(Math.abs(answer.rates.wheel - at100)).toBeLessThan(0.000501);
    const mph = answerOrdersRequest(shippedKnowledge(), { tyre: size, speedMph: 60 });
    expect(Math.abs(mph.rates.wheel - at60)).toBeLessThan(0.000501);
  });
});

describe("worked examples of service text", () => {
  /* B-11. Source: service text of a 2003 saloon (Seville): 12 x 1.07 = 12.84 Hz, second order 26, third 39; 1 %. */
  it("P235/60ZR16 at 60 mph", () => {
    const answer = answerOrdersRequest(shippedKnowledge(), { tyre: "P235/60ZR16", speedMph: 60 });
    const wheel = answer.orders.filter(({ shaft }) => shaft === "wheel").map(({ hz }) => hz);
    expectWithin(wheel[0] as number, 12.84, 0.01);
    expect(wheel[0]).toBeCloseTo(12.78, 2);
    expect(Math.round(wheel[1] as number)).toBe(26);
    // 3 x the rounded 13 Hz of the text; the unrounded third order is 38.5.
    expectWithin(wheel[2] as number, 39, 0.02);
  });

  /* B-12. Source: service text of a 2000 saloon (Alero); 1 %. */
  it("P225/50R16 at 60 mph: 14.04 Hz", () => {
    expectWithin(hzAt("P225/50R16", 60), 14.04, 0.01);
    expect(hzAt("P225/50R16", 60)).toBeCloseTo(13.92, 1);
  });

  /* B-13. Source: a course's worked example by pi x diameter (scribd 98319791); "exact" values worked apart from this code. */
  it("P205/65R15 by pi x 25.49 in", () => {
    // Unrounded, as the example has it: 15 in and twice 65 % of 205 mm make 25.49 in.
    const diameterMm = 15 * 25.4 + 2 * 0.65 * 205;
    expect(diameterMm / 25.4).toBeCloseTo(25.49, 2);
    const circumferenceMm = Math.PI * diameterMm;
    const at = (mph: number, finalDrive?: number): ReturnType<typeof shaftRates> => {
      const running: Running = { circumferenceMm, speedKmh: mph * KM_PER_MILE, finalDrive };
      return shaftRates(running);
    };
    expectWithin((KM_PER_MILE * 1e6) / circumferenceMm, 791.7, 0.001);
    expect((KM_PER_MILE * 1e6) / circumferenceMm).toBeCloseTo(791.15, 2);
    expectWithin(at(60).wheel, 13.195, 0.001);
    expect(at(60).wheel).toBeCloseTo(13.186, 3);
    expectWithin(at(60).wheel / 60, 0.2199, 0.001);
    expectWithin(at(75).wheel, 16.49, 0.001);
    expect(at(75).wheel).toBeCloseTo(16.482, 3);
    expectWithin(at(60, 2.78).propshaft as number, 36.6, 0.002);
    expect(at(60, 2.78).propshaft).toBeCloseTo(36.657, 3);
    // The tyre's own design diameter is the example's to within a mm.
    expect(Math.abs(geometry("P205/65R15").designDiameterMm - diameterMm)).toBeLessThan(1);
  });

  /* B-14. Source: service text of 2010 (Ford Super Duty): 7 Hz x 3.08 = 22 Hz first, 44 Hz second order of the propshaft. */
  it("propshaft orders at 40 mph with an axle ratio of 3.08", () => {
    const rates = { wheel: 7, propshaft: 7 * 3.08 };
    const orders = vibrationOrders(shippedKnowledge(), rates, new Map([["drive", "rear"]]));
    const shaft = orders.filter((o) => o.shaft === "propshaft");
    expect(shaft.map(({ order }) => order)).toEqual([1, 2, 3, 4]);
    expect(shaft[0]?.hz).toBeCloseTo(21.56, 10);
    expect(shaft[1]?.hz).toBeCloseTo(43.12, 10);
    const answer = answerOrdersRequest(shippedKnowledge(), {
      circumferenceMm: 3.05 * 835,
      speedMph: 40,
      finalDrive: 3.08,
    });
    expectWithin(answer.rates.propshaft as number, 22, 0.025);
    expectWithin(2 * (answer.rates.propshaft as number), 44, 0.025);
  });
});

describe("engine orders", () => {
  const orders = (rpm: number, cylinders: number) =>
    vibrationOrders(shippedKnowledge(), { wheel: 1, engine: rpm / 60 }, new Map(), cylinders).filter(
      ({ shaft }) => shaft === "engine",
    );

  /* B-18. Source: service text of 2021 (Voyager): the normal order is half the number of cylinders. */
  it.each([
    [3, 1.5],
    [4, 2],
    [5, 2.5],
    [6, 3],
    [8, 4],
    [10, 5],
    [12, 6],
  ])("%i cylinders fire at E%d", (cylinders, order) => {
    const found = orders(600, cylinders);
    const firing = found.find((o) => o.observation === "vibration-engine-firing-order");
    expect(firing?.order).toBe(order);
    expect(firing?.hz).toBeCloseTo(10 * order, 10);
    const halves = found.filter((o) => o.observation === "vibration-engine-half-order");
    expect(halves.map((o) => o.order)).toEqual([0.5, 1.5, 2.5, 3.5].filter((half) => half !== order));
  });

  /* B-19. Source: worked apart from this code, f = rpm / 60 x order. */
  it.each([
    [4, 3000, 1, 50],
    [4, 3000, 2, 100],
    [6, 2400, 3, 120],
    [8, 2000, 4, 133.333333],
    [3, 1800, 1.5, 45],
  ])("%i cylinders at %i rpm: E%d is %d Hz", (cylinders, rpm, order, wanted) => {
    expect(orders(rpm, cylinders).find((o) => o.order === order)?.hz).toBeCloseTo(wanted, 5);
  });
});

/* B-20 to B-22. Source: makers' road-test tables and a text on inner tripods: 1W tyre, 3W inner joint, 1D run-out, 2D joints. */
describe("the finding of an order", () => {
  it.each([
    ["wheel", 1, "vibration-wheel-first-order"],
    ["wheel", 3, "vibration-wheel-third-order"],
    ["propshaft", 1, "vibration-propshaft-first-order"],
    ["propshaft", 2, "vibration-propshaft-second-order"],
  ])("%s %i is %s", (shaft, order, finding) => {
    const all = vibrationOrders(shippedKnowledge(), { wheel: 14, propshaft: 45 }, new Map());
    expect(all.find((o) => o.shaft === shaft && o.order === order)?.observation).toBe(finding);
  });
});
