import { beforeAll, describe, expect, it } from "vitest";
import sharp from "sharp";
import { LONGEST_PHOTO } from "../../app/server/picture-limits.ts";
import { pictureOf } from "../../app/server/picture.ts";
import { removePhoto } from "../../lib/store/index.ts";
import { jpegWithPlace, pngOf, segmentsOf, webpOf } from "../support/made-pictures.ts";
import { forEachStore } from "../support/stores.ts";
import { call, desk, jsonOf, keepCase, type Person, routeOf, signedIn } from "./desk.ts";

const ADD = routeOf("POST", "/cases/{id}/photos");
const READ = routeOf("GET", "/cases/{id}/photos/{photoId}");
const ENTRIES = routeOf("GET", "/cases/{id}/entries");
const REMOVE = routeOf("DELETE", "/cases/{id}");

/** What a JPEG carries beside its picture: application segments other than its own (APP0), and comments. */
function beside(jpeg: Uint8Array): string[] {
  const segments = segmentsOf(jpeg);
  // The tables of the picture (T.81, B.2.4.1): else the walk found nothing.
  expect(segments).toContain("db");
  return segments.filter((name) => /^(APP[1-9]|fe)/.test(name));
}

describe("a picture", () => {
  it("that says where it was taken says nothing any more, and is as it was otherwise", async () => {
    const sent = await jpegWithPlace();
    const before = await sharp(sent).metadata();
    // The field that leads to the place: Exif 2.32, 4.6.3, tag 8825.
    expect(before.exif?.includes(Buffer.from([0x25, 0x88]))).toBe(true);
    expect(segmentsOf(sent)).toContain("APP1 Exif");
    expect(sent.includes("Invented Phone Works")).toBe(true);

    const kept = await pictureOf(sent);
    const after = await sharp(kept.bytes).metadata();
    expect([after.format, after.width, after.height]).toEqual(["jpeg", 60, 40]);
    expect([after.exif, after.xmp, after.iptc, after.comments]).toEqual(Array(4).fill(undefined));
    expect(beside(kept.bytes)).toEqual([]);
    expect(Buffer.from(kept.bytes).includes("Invented Phone Works")).toBe(false);
    const [red, green, blue] = (await sharp(kept.bytes).stats()).channels.map(({ mean }) => mean);
    expect(red).toBeCloseTo(150, -1);
    expect(green).toBeCloseTo(90, -1);
    expect(blue).toBeCloseTo(40, -1);
  });

  // Exif 2.32, 4.6.4.A: orientation 6 is turned by a quarter to the right to be upright.
  it("is turned upright, and its longer side is at most 2048 pixels", async () => {
    const lying = await sharp(await pngOf(3000, 1000))
      .jpeg()
      .withMetadata({ orientation: 6 })
      .toBuffer();
    const { width, height } = await pictureOf(lying);
    expect(height).toBe(2048);
    expect(width).toBeGreaterThan(680);
    expect(width).toBeLessThan(686);
  });

  it("of each kind that phones make is taken, by what it is and not by what it is called", async () => {
    for (const bytes of [await pngOf(30, 20), await webpOf(30, 20), await jpegWithPlace(30, 20)]) {
      expect(await pictureOf(bytes)).toMatchObject({ width: 30, height: 20 });
    }
  });

  it("with something behind it goes on without that", async () => {
    const script = "<script>alert(1)</script>";
    const both = Buffer.concat([await jpegWithPlace(), Buffer.from(script)]);
    expect(Buffer.from((await pictureOf(both)).bytes).includes(script)).toBe(false);
  });

  const svg = Buffer.from(
    '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><rect width="9"/></svg>',
  );
  const gif = (): Promise<Buffer> =>
    sharp({ create: { width: 9, height: 9, channels: 3, background: "red" } })
      .gif()
      .toBuffer();
  // ISO/IEC 23008-12 and 14496-12: a box of 24 bytes, "ftyp", the brand.
  const heic = Buffer.from("\0\0\0\u0018ftypheic\0\0\0\0mif1heic", "latin1");
  const moving = async (): Promise<Buffer> => {
    const frames = await Promise.all([
      pngOf(9, 9),
      pngOf(9, 9).then((f) => sharp(f).negate().png().toBuffer()),
    ]);
    return sharp(frames, { join: { animated: true } })
      .webp({ loop: 0 })
      .toBuffer();
  };
  it.each<[string, () => Buffer | Promise<Buffer>, RegExp]>([
    ["a drawing in SVG", () => svg, /no picture that can be read/],
    ["a GIF", gif, /no picture that can be read/],
    ["a page", () => Buffer.from("<!doctype html><title>x</title>"), /no picture that can be read/],
    ["nothing", () => Buffer.alloc(0), /no picture that can be read/],
    ["noise", () => Buffer.from(Array.from({ length: 5000 }, (_, i) => (i * 7919) % 251)), /no picture/],
    ["the beginning of a JPEG", async () => (await jpegWithPlace(900, 900)).subarray(0, 700), /damaged/],
    [
      "a GIF that begins like a JPEG",
      async () => Buffer.concat([Buffer.from([0xff, 0xd8, 0xff]), await gif()]),
      /no picture/,
    ],
    ["HEIC", () => heic, /HEIC.*Send it as JPEG/],
    ["a moving picture", moving, /moving picture/],
  ])("is refused in words: %s", async (_what, bytes, words) => {
    await expect(pictureOf(await bytes())).rejects.toMatchObject({
      code: "bad-photo",
      message: expect.stringMatching(words),
    });
  });

  it("that unpacks to far more than it is long is refused before it does", async () => {
    const side = 8100;
    const bomb = await sharp(Buffer.alloc(side * side), { raw: { width: side, height: side, channels: 1 } })
      .png()
      .toBuffer();
    expect(bomb.length).toBeLessThan(1_000_000);
    await expect(pictureOf(bomb)).rejects.toMatchObject({
      code: "bad-photo",
      message: expect.stringMatching(/64 million pixels.*smaller/),
    });
  });
});

forEachStore("photos of a case", (databases) => {
  const held = desk(databases);
  let ana: Person;
  let picture: Buffer;
  beforeAll(async () => {
    ana = await signedIn(held.store, "ana", "technician");
    picture = await jpegWithPlace();
    await keepCase(held.store, "pictured", "ana");
  });
  const add = (caseId: string, id: string, more = "", body: Uint8Array = picture): Promise<Response> =>
    call(ADD, { as: ana.cookie, params: { id: caseId }, query: `?id=${id}${more}`, body });
  const read = (caseId: string, photoId: string, headers = {}): Promise<Response> =>
    call(READ, { as: ana.cookie, params: { id: caseId, photoId }, headers });

  it("are kept, named by an entry, and shown to who may read the case", async () => {
    const added = await add(
      "pictured",
      "photo-one",
      `&by=nobody&caption=${encodeURIComponent("left, below")}`,
    );
    expect(await jsonOf(added)).toEqual({ photo: "photo-one", version: 2 });
    const { entries } = await jsonOf<{ entries: { entry: object }[] }>(
      call(ENTRIES, { as: ana.cookie, params: { id: "pictured" } }),
    );
    expect(entries.at(-1)?.entry).toMatchObject({
      ...{ kind: "photo", photo: "photo-one", width: 60, height: 40, caption: "left, below", by: "ana" },
    });
    const shown = await read("pictured", "photo-one");
    expect(shown.headers.get("content-type")).toBe("image/jpeg");
    const bytes = new Uint8Array(await shown.arrayBuffer());
    expect((await sharp(bytes).metadata()).exif).toBeUndefined();
    expect(beside(bytes)).toEqual([]);
    expect((await read("pictured", "photo-one", { "if-none-match": '"photo-one"' })).status).toBe(304);
    expect((await read("pictured", "photo-two")).status).toBe(404);
  });

  // RFC 9110, 13.1.2: the comparison is weak, and the header may list several tags or be "*".
  it.each(['"taken-back"', 'W/"taken-back"', '"other", "taken-back"', "*"])(
    "that were taken back are confirmed to no browser that keeps them (%s)",
    async (known) => {
      const caseId = `back-${known.replaceAll(/[^a-z]/gi, "") || "any"}`;
      await keepCase(held.store, caseId, "ana");
      expect((await add(caseId, "taken-back")).status).toBe(201);
      const again = await read(caseId, "taken-back", { "if-none-match": known });
      expect([again.status, again.headers.get("etag")]).toEqual([304, '"taken-back"']);
      await removePhoto(held.store, caseId, "taken-back");
      expect((await read(caseId, "taken-back", { "if-none-match": known })).status).toBe(404);
    },
  );

  it("sent again change nothing", async () => {
    await keepCase(held.store, "again", "ana");
    const answers = [await add("again", "photo-one"), await add("again", "photo-one")];
    expect(answers.map(({ status }) => status)).toEqual([201, 201]);
    expect(await jsonOf(answers[1] as Response)).toEqual({ photo: "photo-one", version: 2 });
  });

  it("are twelve at most, and go with their case", async () => {
    await keepCase(held.store, "many", "ana");
    const sent = await Promise.all(Array.from({ length: 14 }, (_, i) => add("many", `photo-no-${i}`)));
    expect(sent.map(({ status }) => status).toSorted((a, b) => a - b)).toEqual([
      ...Array(12).fill(201),
      ...[413, 413],
    ]);
    const full = await add("many", "photo-more");
    expect(await jsonOf(full)).toMatchObject({ type: "/problems/photos-full" });
    const removed = await call(REMOVE, {
      as: (await signedIn(held.store, "olga", "owner")).cookie,
      params: { id: "many" },
      headers: { "if-match": "*" },
    });
    expect(removed.status).toBe(204);
    const left = await held.store.db
      .selectFrom("photos")
      .select("id")
      .where("case_id", "=", "many")
      .execute();
    expect(left).toEqual([]);
  });

  it("of more than 15 MB are refused with what to do", async () => {
    const response = await add("pictured", "photo-big", "", new Uint8Array(LONGEST_PHOTO + 1));
    expect(response.status).toBe(413);
    expect(await jsonOf(response)).toMatchObject({
      type: "/problems/too-large",
      detail: expect.stringMatching(/15000000 bytes\. Send a smaller picture/),
    });
  });

  it("that are none leave nothing behind", async () => {
    const response = await add("pictured", "photo-bad", "", new TextEncoder().encode("<svg/>"));
    expect([response.status, await jsonOf(response)]).toMatchObject([422, { type: "/problems/bad-photo" }]);
    expect((await read("pictured", "photo-bad")).status).toBe(404);
  });
});
