import sharp, { type Sharp } from "sharp";

const plain = (width: number, height: number): Sharp =>
  sharp({ create: { width, height, channels: 3, background: { r: 150, g: 90, b: 40 } } });

/** A JPEG of one colour that says where, when and by what it was taken; the place is 51.4779 N, 0.0015 W. */
export function jpegWithPlace(width = 60, height = 40): Promise<Buffer> {
  return plain(width, height)
    .jpeg()
    .withExif({
      // Names and forms of the fields: Exif 2.32 (JEITA CP-3451), 4.6.
      IFD0: { Make: "Invented Phone Works", DateTime: "2026:03:01 09:00:00" },
      IFD3: {
        GPSLatitudeRef: "N",
        GPSLatitude: "51/1 28/1 4044/100",
        GPSLongitudeRef: "W",
        GPSLongitude: "0/1 0/1 540/100",
      },
    })
    .toBuffer();
}

export const pngOf = (width: number, height: number): Promise<Buffer> =>
  plain(width, height).png().toBuffer();
export const webpOf = (width: number, height: number): Promise<Buffer> =>
  plain(width, height).webp().toBuffer();

/**
 * Names of the segments of a JPEG before its picture data: "APP0 JFIF", "APP1 Exif" ...
 *
 * Source  ITU-T T.81, B.1.1: FF, marker, two bytes of length that count themselves.
 */
export function segmentsOf(jpeg: Uint8Array): string[] {
  const bytes = Buffer.from(jpeg);
  const found: string[] = [];
  for (let at = 2; at < bytes.length && bytes[at] === 0xff; at += 2 + bytes.readUInt16BE(at + 2)) {
    const marker = bytes[at + 1] ?? 0;
    if (marker === 0xda) break;
    const name = bytes
      .subarray(at + 4, at + 9)
      .toString("latin1")
      .replaceAll(/[^A-Za-z]/g, "");
    found.push(marker >= 0xe0 && marker <= 0xef ? `APP${marker - 0xe0} ${name}` : marker.toString(16));
  }
  return found;
}
