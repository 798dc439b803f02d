import { route } from "../route-description.ts";
import { CaseParams } from "../schemas/cases.ts";
import { Restored } from "../schemas/archive.ts";

export const readArchive = route({
  method: "GET",
  path: "/api/v1/archive",
  action: "keep-archive",
  summary: "The whole workshop as one archive: cases, accounts, links and exercises, without sessions",
  gives: { status: 200, what: "The archive", mediaType: "application/zip" },
});

export const restoreArchive = route({
  method: "POST",
  path: "/api/v1/archive",
  action: "keep-archive",
  summary: "Take an archive in, whole or not at all; only while there are no cases and no exercises",
  bytes: { mediaType: "application/zip", limit: 200_000_000 },
  gives: { status: 200, what: "What was taken in", body: Restored },
  problems: ["not-empty", "bad-archive"],
});

export const readChecks = route({
  method: "GET",
  path: "/api/v1/cases/{id}/checks.csv",
  action: "read-cases",
  summary: "The case's answers as a table",
  params: CaseParams,
  missing: "no-such-case",
  gives: {
    status: 200,
    what: "Comma-separated values (RFC 4180)",
    mediaType: "text/csv",
    headers: { etag: "The case's version." },
  },
  problems: ["case-removed"],
});
