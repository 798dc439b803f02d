import { loadKnowledge } from "../knowledge/load-knowledge.ts";

export const dynamic = "force-static";

/** The compiled knowledge as one static file, made when the app is built. */
export function GET(): Response {
  return Response.json(loadKnowledge());
}
