/** A fault at a place, on this car. */
export interface Suspect {
  readonly index: number;
  /** `fault@place` */
  readonly id: string;
  readonly fault: string;
  readonly part: string;
  readonly place: string;
  /** Chance before any finding. */
  readonly prior: number;
  /** Share of cars like this one that have the part there at all; 1 when it is known. */
  readonly exists: number;
}
