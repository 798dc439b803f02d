import { route } from "../route.ts";
import { ApiDocument, Health, Restored } from "../schemas/status.ts";

export const readHealth = route({
  method: "GET",
  path: "/api/v1/health",
  action: "see-status",
  summary: "Whether server and database answer",
  gives: { status: 200, what: "Both answer", body: Health },
});

export const readApiDocument = route({
  method: "GET",
  path: "/api/v1/openapi.json",
  action: "see-status",
  summary: "This document",
  gives: { status: 200, what: "OpenAPI 3.1", body: ApiDocument },
});

export const readArchive = route({
  method: "GET",
  path: "/api/v1/archive",
  action: "keep-archive",
  summary: "The whole workshop as one archive: cases and accounts, without sessions and links",
  gives: { status: 200, what: "The archive", mediaType: "application/zip" },
});

export const restoreArchive = route({
  method: "POST",
  path: "/api/v1/archive",
  action: "keep-archive",
  summary: "Take an archive in, whole or not at all; only while there are no cases",
  bytes: { mediaType: "application/zip", limit: 200_000_000 },
  gives: { status: 200, what: "What was taken in", body: Restored },
  problems: ["shop-not-empty", "bad-archive"],
});
