import { expect } from "vitest";

/** Expects two lists of numbers to agree within an absolute tolerance; a NaN fails. */
export function expectSame(got: ArrayLike<number>, wanted: ArrayLike<number>, tolerance = 1e-12): void {
  expect(got.length).toBe(wanted.length);
  let error = 0;
  for (let i = 0; i < got.length; i++) error = Math.max(error, Math.abs(got[i]! - wanted[i]!));
  expect(error).toBeLessThan(tolerance);
}
