import { z } from "zod";
import { CaseId } from "./cases.ts";
import { lineOfText } from "./common.ts";

/** Id that the device makes for what it sends, so that sending it again changes nothing. */
export const SentId = z.string().regex(/^[A-Za-z0-9-]{8,40}$/, "use 8 to 40 letters, digits and hyphens");

export const Caption = lineOfText(200).trim();

export const PhotoQuery = z.strictObject({
  id: SentId,
  by: lineOfText(80).trim().min(1).describe("Who took it; without an account on the server.").exactOptional(),
  caption: Caption.exactOptional(),
});

export const PhotoParams = z.strictObject({ id: CaseId, photoId: SentId });

export const KeptPhoto = z.strictObject({
  photo: z.string(),
  version: z.number().int().describe("The case's version."),
});
