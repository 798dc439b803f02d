import { route } from "../route-description.ts";
import { ApiDocument, Health } from "../schemas/status.ts";

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
