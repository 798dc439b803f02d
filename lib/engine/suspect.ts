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
}
