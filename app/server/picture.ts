import sharp from "sharp";
import type { Picture } from "../../lib/store/index.ts";
import { ApiProblem } from "./problem.ts";

/** Most pixels of a picture that is decoded: what says more is a mistake, or made to fill the memory. */
const MOST_PIXELS = 64_000_000;
/** Longer side of a kept photo, pixels: a crack in a boot can still be seen when it is drawn larger. */
const LONGEST_SIDE = 2048;
const QUALITY = 80;

/** What may be decoded, by what the file is and not by what it is called; everything else is never even tried. */
const DECODERS = ["Jpeg", "Png", "Webp", "Heif"];
sharp.block({ operation: ["VipsForeignLoad"] });
sharp.unblock({ operation: DECODERS.map((name) => `VipsForeignLoad${name}Buffer`) });

const bad = (detail: string): ApiProblem => new ApiProblem("bad-photo", detail);

/** Apple's phones keep pictures so (ISO/IEC 23008-12: a box "ftyp" with one of these brands); nothing here decodes them. */
const isHeic = (bytes: Uint8Array): boolean =>
  /^ftyp(heic|heix|hevc|hevx|heim|heis|mif1|msf1)/.test(
    Buffer.from(bytes.subarray(4, 12)).toString("latin1"),
  );

/** Why a file is no photo that can be kept, from what the decoder said. */
function refusal(bytes: Uint8Array, error: unknown): ApiProblem {
  const said = error instanceof Error ? error.message : "";
  if (/pixel limit/i.test(said)) {
    return bad(`The picture has more than ${MOST_PIXELS / 1_000_000} million pixels. Send a smaller one.`);
  }
  if (isHeic(bytes)) {
    return bad("HEIC pictures cannot be read here. Send it as JPEG: a screenshot of the picture will do.");
  }
  return bad(
    "The file is no picture that can be read here, or is damaged. Send a JPEG, PNG or WebP picture.",
  );
}

/**
 * A photo as it is kept: decoded and written anew as an upright JPEG of at most 2048 pixels a side, in sRGB. Only the
 * picture goes over: no place, time, camera, text or anything else that stood in the file beside it.
 *
 * Errors  ApiProblem bad-photo: no picture, damaged, moving, or larger than 64 million pixels.
 */
export async function pictureOf(bytes: Uint8Array): Promise<Picture> {
  try {
    const image = sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: "error" });
    const { pages = 1 } = await image.metadata();
    if (pages > 1) throw bad("It is a moving picture. Send a still one.");
    const { data, info } = await image
      .autoOrient()
      .resize({ width: LONGEST_SIDE, height: LONGEST_SIDE, fit: "inside", withoutEnlargement: true })
      .flatten({ background: "white" })
      .jpeg({ quality: QUALITY })
      .toBuffer({ resolveWithObject: true });
    return { bytes: data, width: info.width, height: info.height };
  } catch (error) {
    throw error instanceof ApiProblem ? error : refusal(bytes, error);
  }
}
