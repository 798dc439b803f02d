import { PHOTO_FILE } from "../picture-limits.ts";
import { route } from "../route-description.ts";
import { CaseParams } from "../schemas/cases.ts";
import { KeptPhoto, PhotoParams, PhotoQuery } from "../schemas/photos.ts";

export const addPhoto = route({
  method: "POST",
  path: "/api/v1/cases/{id}/photos",
  action: "add-entries",
  summary: "Keep a photo with a case: JPEG, PNG or WebP, written anew without place, time or camera",
  params: CaseParams,
  missing: "no-such-case",
  query: PhotoQuery,
  bytes: PHOTO_FILE,
  gives: { status: 201, what: "Kept, and named by an entry of the case", body: KeptPhoto },
  problems: ["case-removed", "case-full", "photos-full", "bad-photo", "entry-differs"],
});

export const readPhoto = route({
  method: "GET",
  path: "/api/v1/cases/{id}/photos/{photoId}",
  action: "read-cases",
  summary: "A photo of a case",
  params: PhotoParams,
  missing: "no-such-photo",
  gives: { status: 200, what: "The picture", mediaType: "image/jpeg" },
  problems: ["no-such-case", "case-removed"],
});
