import type { Component } from "./core/index.ts";
import type { Grounded } from "./ground.ts";
import { repairOf } from "./repair-cost.ts";

/** What is to be told apart: the same parts at the same places are one repair, and get one number. */
export function mergeByRepair(grounded: Grounded, components: readonly Component[]): Int32Array {
  const values = new Map<string, number>();
  return Int32Array.from(components, (component) => {
    const repair =
      component.kind === "set"
        ? [...new Set(component.set.map((i) => repairOf(grounded, i)))].sort().join(" ")
        : component.kind;
    const value = values.get(repair) ?? values.size;
    values.set(repair, value);
    return value;
  });
}
