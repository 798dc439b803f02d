import { z } from "zod";

const count = z.number().int().min(0);

/** How much of an archive was taken in. */
export const Restored = z.strictObject({
  cases: count,
  entries: count,
  accounts: count,
  links: count,
  photos: count,
  exercises: count,
  handOuts: count,
  attempts: count,
});
