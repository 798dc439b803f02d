import { logistic, logOdds } from "../maths/log-odds.ts";

/** A probability that moves in log-odds. */
export interface Movable {
  readonly at: number;
  readonly spread: number;
}

/** A probability strictly between 0 and 1, with the spread of its natural log-odds. */
export function movable(p: number, spread: number): Movable {
  return { at: logOdds(p), spread };
}

/** The probability, moved by so many spreads. */
export function moved({ at, spread }: Movable, by: number): number {
  return logistic(at + spread * by);
}

/** Grades of one link, all moved alike; those with different spreads must not cross. */
export function movedGrades(grades: readonly Movable[], by: number): number[] {
  let before = 1;
  return grades.map((grade) => {
    before = Math.min(before, moved(grade, by));
    return before;
  });
}
