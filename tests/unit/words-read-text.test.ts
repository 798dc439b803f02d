import { describe, expect, it } from "vitest";
import { readText } from "../../lib/words/index.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

const read = (text: string) => readText(shippedKnowledge(), text);
const ids = (text: string) => read(text).map((p) => (p.state === "absent" ? `-${p.finding}` : p.finding));
const one = (text: string, finding: string) => read(text).find((p) => p.finding === finding);

// What each sentence says is common usage of English (no source).
describe("proposals", () => {
  it("carry the exact words, with where they stand", () => {
    const text = "Hm. It CLUNKS over speed bumps, front left.";
    const humps = one(text, "noise:humps");
    expect(humps?.words).toBe("speed bumps");
    expect(humps?.spans).toEqual([{ from: 19, to: 30 }]);
    expect(one(text, "noise:clunk")?.words).toBe("CLUNKS");
    expect(humps?.name).toBe("noise: over humps taken by both wheels");
  });

  it("join several places in one proposal", () => {
    const clunk = one("A clunk at the front. The clunk is loud.", "noise:clunk");
    expect(clunk?.words).toBe("clunk … clunk");
    expect(clunk?.spans).toHaveLength(2);
  });

  it("are hedged and less sure where the writer is", () => {
    const sure = one("It comes from the rear, a hum.", "noise:from-rear");
    const hedged = one("A hum, I think it comes from the rear.", "noise:from-rear");
    expect(sure?.hedged).toBe(false);
    expect(hedged?.hedged).toBe(true);
    expect(hedged?.confidence).toBeLessThan(sure?.confidence ?? 0);
  });

  it("are less sure of a slip than of a word well written", () => {
    const slip = one("a cluncking", "noise:clunk");
    expect(slip?.words).toBe("cluncking");
    expect(slip?.confidence).toBeLessThan(one("a clunking", "noise:clunk")?.confidence ?? 0);
  });

  it("come as an empty list for text that tells nothing", () => {
    for (const text of [
      "",
      "   \n\t",
      "?!…",
      "12345",
      "The weather was lovely in spring.",
      "日本語のテキスト",
    ]) {
      expect(read(text)).toEqual([]);
    }
  });
});

describe("complaints and their features", () => {
  it("keep two complaints of one text apart", () => {
    const found = ids("There is a clunk over bumps and a shimmy at 90 km/h.");
    expect(found).toContain("noise:small-bumps");
    expect(found).toContain("shake:speed-80-110");
    expect(found).not.toContain("shake:small-bumps");
    expect(found).not.toContain("noise:speed-80-110");
  });

  it("attach to what came before when a sentence names none", () => {
    expect(ids("It shudders. Only when pulling away.")).toContain("shake:pulling-away");
  });

  it("imply the complaint that only they can belong to", () => {
    expect(ids("It creaks.")).toEqual(["noise", "noise:creak"]);
    expect(ids("Inner edges bald.")).toContain("tyre-wear");
    expect(ids("drifts to the left")).toEqual(["pull", "pull:pull-left"]);
  });

  it("stand alone when the text names no complaint at all", () => {
    expect(ids("only over speed bumps")).toEqual(["humps"]);
  });
});

describe("denials", () => {
  it("hold for the moment named and leave the complaint open", () => {
    expect(ids("no noise when braking")).toEqual(["-noise:braking"]);
    expect(ids("It hums, but not in the wet.")).toEqual(["noise", "noise:hum", "-noise:wet"]);
  });

  it("run through a list", () => {
    expect(ids("no shaking, vibration or pull")).toEqual(["-shake", "-pull"]);
  });

  it("do not come from words that deny nothing", () => {
    expect(ids("I have no idea what the rattle is")).toContain("noise:rattle");
    expect(ids("not only a rattle")).toContain("noise:rattle");
    expect(ids("It will not stop squealing")).toContain("noise:squeal");
  });

  it("do not stand where what has gone is said to be back", () => {
    expect(ids("The shimmy went away after a week, but now it's back.")).toEqual(["shake"]);
    expect(ids("That fixed the shimmy. It came back on Monday.")).toEqual(["shake"]);
    expect(ids("The shimmy went away. They gave the car back.")).toEqual(["-shake"]);
  });

  it("of a narrow moment are none of the wide one", () => {
    const found = ids("It squeals, but not when I brake hard.");
    expect(found).toContain("-noise:braking-hard");
    expect(found).not.toContain("-noise:braking");
  });

  it("drop what a complaint that has gone was like", () => {
    expect(ids("The shimmy is gone.")).toEqual(["-shake"]);
    expect(ids("There was a shimmy. It went away.")).toEqual(["-shake"]);
  });
});

describe("until and unless", () => {
  it("turn a denial into presence from that moment on", () => {
    expect(ids("No noise until I brake.")).toEqual(["noise", "noise:braking"]);
    expect(ids("No noise unless I brake.")).toEqual(["noise", "noise:braking"]);
    expect(ids("I never heard a noise until I turned left.")).toEqual(["noise", "noise:turning-left"]);
    expect(ids("Until I brake there is no noise.").sort()).toEqual(["noise", "noise:braking"]);
    expect(ids("It is not until I brake that it squeals.")).toContain("noise:braking");
    expect(ids("It is quiet until I brake, then it squeals.")).toContain("noise:braking");
  });

  it("end what was told before them at the moment named", () => {
    expect(ids("It clunks until I turn left.")).toEqual(["noise", "noise:clunk", "-noise:turning-left"]);
    expect(ids("It whines until I lift off.")).toEqual(["noise", "noise:whine", "-noise:lifting-off"]);
    expect(ids("It clunks unless I am braking.")).toEqual(["noise", "noise:clunk", "-noise:braking"]);
    expect(ids("Until I turn right, it hums.")).toContain("-noise:turning-right");
    const warm = ids("It squeaks until it warms up.");
    expect(warm).toContain("noise:cold");
    expect(warm).toContain("-noise:warm");
  });

  it("end nothing that is told of only afterwards", () => {
    const then = ids("It runs straight on the flat until I brake, then it pulls right.");
    expect(then).toContain("pull:braking");
  });

  it("part the speeds with and without", () => {
    const later = ids("There is no vibration until 60 mph.");
    expect(later).toContain("shake:above-110");
    expect(later).toContain("-shake:speed-30-60");
    const earlier = ids("It vibrates until 60 mph.");
    expect(earlier).toContain("shake:speed-30-60");
    expect(earlier).not.toContain("shake:above-110");
    expect(ids("No vibration until I reach 100 km/h.")).toContain("shake:above-110");
  });
});

describe("places", () => {
  it("of an observation come from the words around it", () => {
    expect(ids("front left: play at 3 and 9")).toEqual(["play-3-9@front-left"]);
    expect(ids("play at 3 and 9")).toEqual(["play-3-9"]);
    expect(ids("rear: play at 3 and 9")).toEqual(["play-3-9"]);
  });

  it("by the seat of the driver or the kerb tell no side, for that differs by country", () => {
    for (const side of ["driver's side", "passenger side", "nearside", "offside"]) {
      const found = ids(`A knock from the ${side} front wheel.`);
      expect(found).toContain("noise:from-front");
      expect(found.filter((id) => /from-(left|right)$/.test(id))).toEqual([]);
    }
  });

  it("are not read from other uses of the words", () => {
    for (const text of [
      "The squeak came back.",
      "A squeak right away.",
      "It squeaks right now.",
      "I left it with them because it squeaks.",
      "All right, it squeaks.",
    ]) {
      expect(ids(text).filter((id) => id.includes(":from-"))).toEqual([]);
    }
  });
});

describe("grades", () => {
  const levels = shippedKnowledge().observations.find((o) => o.id === "play-3-9")?.levels ?? [];

  it("are the first for a little and the last for a lot", () => {
    expect(one("slight play at 3 and 9", "play-3-9")?.level).toBe(levels[0]);
    expect(one("a little play at 3 and 9", "play-3-9")?.level).toBe(levels[0]);
    expect(one("clear play at 3 and 9", "play-3-9")?.level).toBe(levels.at(-1));
    expect(one("play at 3 and 9", "play-3-9")?.level).toBeUndefined();
  });
});

describe("work", () => {
  it("is known to have had no effect when the next clause says so", () => {
    for (const [text, tried] of [
      ["I had the discs changed. It made no difference.", "tried-brakes"],
      ["The wheels were balanced twice and it did not help.", "tried-balancing"],
      ["The front wheel bearings were changed last month, but that has not helped.", "tried-bearings"],
      ["Had the tracking done. Still pulls to the left.", "tried-alignment"],
      ["They changed the engine mounts; nothing changed.", "tried-mounts"],
      ["The garage fitted new shocks. That didn't cure the bounce.", "tried-dampers"],
    ] as const) {
      expect(ids(text)).toContain(tried);
    }
  });

  it("is not known to have had none from a denial of something else", () => {
    for (const text of [
      "New pads last week, no noise since.",
      "New shocks fitted. No more bouncing.",
      "New tyres were fitted yesterday. It does not pull.",
      "The ball joints were replaced and now there is a squeak.",
      "The noise is from the discs. No change in the wet.",
    ]) {
      expect(ids(text).filter((id) => id.startsWith("tried-"))).toEqual([]);
    }
  });

  it("that cured nothing leaves the complaint", () => {
    const neither = ids("Neither the new discs nor the new pads made any difference to the judder.");
    expect(neither).toEqual(expect.arrayContaining(["brakes-done-lately", "tried-brakes", "shake"]));
    expect(ids("That didn't fix the shake.")).toEqual(["shake"]);
    expect(ids("That fixed the shake.")).toEqual(["-shake"]);
  });
});

describe("events", () => {
  it("are not the moments that share their words", () => {
    const after = ids("After hitting a pothole it clunks.");
    expect(after).toContain("pothole-strike");
    expect(after).not.toContain("noise:one-wheel-bump");
    const each = ids("It clunks every time I hit a pothole.");
    expect(each).toContain("noise:one-wheel-bump");
    expect(each).not.toContain("pothole-strike");
  });

  it("are not work that is only wished for or long past", () => {
    expect(ids("Do I need new brakes?")).toEqual([]);
    expect(ids("New brakes three years ago.")).toEqual([]);
    expect(ids("New brakes last week.")).toEqual(["brakes-done-lately"]);
  });
});
