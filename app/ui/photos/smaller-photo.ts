/** Smaller files go as they are. */
const SMALL_BYTES = 1_000_000;
/** Longer side that the server keeps anyway, pixels. */
const LONGEST_SIDE = 2048;

/**
 * A large photo made as small as the server would make it, so that it goes over a slow line; the file itself where the browser
 * cannot do that: the server then does, or says why not.
 */
export async function smallerPhoto(file: Blob): Promise<Blob> {
  if (file.size <= SMALL_BYTES) return file;
  try {
    const image = await createImageBitmap(file, { imageOrientation: "from-image" });
    const scale = Math.min(1, LONGEST_SIDE / Math.max(image.width, image.height));
    const canvas = document.createElement("canvas");
    canvas.width = Math.round(image.width * scale);
    canvas.height = Math.round(image.height * scale);
    const pen = canvas.getContext("2d");
    if (pen === null) return file;
    pen.drawImage(image, 0, 0, canvas.width, canvas.height);
    image.close();
    const made = await new Promise<Blob | null>((resolve) => {
      canvas.toBlob(resolve, "image/jpeg", 0.85);
    });
    return made !== null && made.size < file.size ? made : file;
  } catch {
    return file;
  }
}
