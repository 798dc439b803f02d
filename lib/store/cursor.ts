import { z } from "zod";
import { StoreProblem } from "./problem.ts";

const Place = z.tuple([z.string().max(40), z.string().max(64)]);

/** A place in the list of cases: the last one that was shown. */
export interface CasePlace {
  readonly changedAt: string;
  readonly id: string;
}

export function writeCursor({ changedAt, id }: CasePlace): string {
  return Buffer.from(JSON.stringify([changedAt, id])).toString("base64url");
}

/** Errors  StoreProblem bad-cursor: the text is not one that `writeCursor` made. */
export function readCursor(text: string): CasePlace {
  try {
    const [changedAt, id] = Place.parse(JSON.parse(Buffer.from(text, "base64url").toString()));
    return { changedAt, id };
  } catch (cause) {
    throw new StoreProblem(
      "bad-cursor",
      "This is no place in the list of cases. Begin at the first page, and take `next` from there.",
      {},
      { cause },
    );
  }
}
