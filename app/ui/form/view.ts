import type { LayPicture } from "../../../lib/knowledge/schema/lay.ts";

/** The form as the server gives it; the tests of the route hold the two to one shape. */
export interface View {
  /** What the workshop says before the questions. */
  readonly words: string | null;
  readonly car: string;
  readonly invented: boolean;
  readonly expiresAt: string;
  /** In order; the last of it can be taken back. */
  readonly said: readonly {
    readonly id: string;
    readonly kind: "answer" | "words" | "photo";
    readonly asked: string | null;
    readonly text: string;
  }[];
  /** Null: nothing more is asked. */
  readonly question: {
    readonly id: string;
    readonly text: string;
    readonly help: string | null;
    readonly example: string | null;
    readonly picture: LayPicture | null;
    readonly steps: readonly string[];
    readonly cautions: readonly string[];
    readonly choices: readonly string[];
  } | null;
  readonly most: number;
  readonly photosLeft: number;
  /** Null: there is nothing to go by yet. `stop`: the answers speak against driving. */
  readonly advice: {
    readonly stop: boolean;
    readonly name: string;
    readonly say: string;
    readonly stopIf: readonly string[];
  } | null;
  readonly done: boolean;
}
