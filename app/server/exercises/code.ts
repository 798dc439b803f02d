import { randomInt } from "node:crypto";

/** Letters and digits that cannot be taken for each other when read aloud or from a board. */
const LETTERS = "23456789ABCDEFGHJKMNPQRSTUVWXYZ";
const LENGTH = 8;

/** A code to be typed. */
export function newCode(): string {
  return Array.from({ length: LENGTH }, () => LETTERS[randomInt(LETTERS.length)]).join("");
}

/** A code as it was meant, whatever stands between its letters. */
export const plainCode = (typed: string): string => typed.toUpperCase().replaceAll(/[^A-Z0-9]/g, "");
