/** Longest file of a photo, bytes: above what phones make, far below what would hold the server up. */
export const LONGEST_PHOTO = 15_000_000;

/** How a photo is sent: as it is, whatever it says it is; what it is shows when it is decoded. */
export const PHOTO_FILE = {
  mediaType: "application/octet-stream",
  limit: LONGEST_PHOTO,
  mend: "Send a smaller picture.",
} as const;
