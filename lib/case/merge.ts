import type { Entry } from "./entries.ts";
import { orderEntries } from "./order-entries.ts";

/**
 * The union of entry lists, once each and in order: how two devices come to one case.
 *
 * Any order and grouping of merges gives the same list.
 */
export function mergeEntries(...lists: readonly (readonly Entry[])[]): Entry[] {
  return orderEntries(lists.flat());
}
