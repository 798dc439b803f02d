import { route } from "../route-description.ts";
import {
  AddedEntries,
  CaseHead,
  CaseList,
  CaseParams,
  EntriesQuery,
  EntryList,
  LinkList,
  LinkParams,
  ListQuery,
  MadeLink,
  NewEntries,
  NewLink,
  Shared,
} from "../schemas/cases.ts";

const VERSION = { etag: "The case's version." };
const ONE_CASE = { params: CaseParams, missing: "no-such-case" } as const;

export const listCases = route({
  method: "GET",
  path: "/api/v1/cases",
  action: "read-cases",
  summary: "The cases that the asker may see: picked, sorted, in pages",
  query: ListQuery,
  gives: { status: 200, what: "One page", body: CaseList },
});

export const readCase = route({
  method: "GET",
  path: "/api/v1/cases/{id}",
  action: "read-cases",
  summary: "The head of one case",
  ...ONE_CASE,
  gives: { status: 200, what: "The head", body: CaseHead, headers: VERSION },
  problems: ["case-removed"],
});

export const removeCase = route({
  method: "DELETE",
  path: "/api/v1/cases/{id}",
  action: "remove-case",
  summary: "Remove what a case holds, for good; its id stays taken",
  ...ONE_CASE,
  ifMatch: true,
  gives: { status: 204, what: "Removed" },
  problems: ["case-removed"],
});

export const readEntries = route({
  method: "GET",
  path: "/api/v1/cases/{id}/entries",
  action: "read-cases",
  summary: "The entries that came after one that is known",
  ...ONE_CASE,
  query: EntriesQuery,
  gives: { status: 200, what: "Entries in the order that they arrived", body: EntryList, headers: VERSION },
  problems: ["case-removed"],
});

export const addEntries = route({
  method: "POST",
  path: "/api/v1/cases/{id}/entries",
  action: "add-entries",
  summary: "Add entries, all or none; the first ones of a case hold its opening. May be repeated",
  ...ONE_CASE,
  body: NewEntries,
  gives: { status: 200, what: "What was new and what was known", body: AddedEntries, headers: VERSION },
  problems: ["entry-differs", "case-removed", "case-full"],
});

export const followCase = route({
  method: "GET",
  path: "/api/v1/cases/{id}/events",
  action: "read-cases",
  summary: "Tells the case's version now and whenever it grows, within a second, as server-sent events",
  ...ONE_CASE,
  gives: {
    status: 200,
    what: "Events `version` with the version as JSON, `removed` when the case is gone; comments between them",
    mediaType: "text/event-stream",
  },
  problems: ["case-removed", "busy"],
});

export const readCaseFile = route({
  method: "GET",
  path: "/api/v1/cases/{id}/file.json",
  action: "read-cases",
  summary: "The case as a file that any copy of Cornerwise takes in",
  ...ONE_CASE,
  gives: { status: 200, what: "The case file", mediaType: "application/json", headers: VERSION },
  problems: ["case-removed"],
});

export const listLinks = route({
  method: "GET",
  path: "/api/v1/cases/{id}/links",
  action: "share-case",
  summary: "The links that were made to a case",
  ...ONE_CASE,
  gives: { status: 200, what: "The links, the newest first, without their tokens", body: LinkList },
  problems: ["case-removed"],
});

export const makeLink = route({
  method: "POST",
  path: "/api/v1/cases/{id}/links",
  action: "share-case",
  summary: "Make a link by which an outsider reads this one case",
  ...ONE_CASE,
  body: NewLink,
  gives: { status: 201, what: "The link; its token is not shown again", body: MadeLink },
  problems: ["case-removed"],
});

export const revokeLink = route({
  method: "DELETE",
  path: "/api/v1/links/{id}",
  action: "share-case",
  summary: "End a link before its time",
  params: LinkParams,
  missing: "no-such-link",
  gives: { status: 204, what: "The link opens nothing any more" },
});

export const readShared = route({
  method: "GET",
  path: "/api/v1/shared",
  action: "read-shared",
  summary: "What a link opens; the token comes as `Authorization: Bearer`",
  token: true,
  gives: { status: 200, what: "The one case", body: Shared },
  problems: ["link-over", "case-removed"],
});
