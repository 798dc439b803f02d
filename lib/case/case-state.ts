import type { CaseCar, Entry, EntryOf } from "./entries.ts";
import type { LabelPart } from "./entry-label.ts";

/** One finding as it stands; has every field of the engine's answer, and where it came from. */
export interface CaseAnswer {
  readonly finding: string;
  readonly state: "present" | "absent" | "unknown";
  readonly level?: string;
  readonly value?: number;
  /** Diameter of the circle that it was measured on. */
  readonly circleMm?: number;
  readonly by: "report" | "check";
  readonly words?: string;
  readonly check?: string;
  /** Given by the customer, by the form of a link. */
  readonly from?: "customer";
  /** Id of the entry that gave it. */
  readonly entry: string;
}

export interface TimelineItem {
  readonly entry: Entry;
  readonly retracted: boolean;
  /** Kept without effect: its kind is of a newer version, or it belongs to another case. */
  readonly ignored: boolean;
  readonly label: readonly LabelPart[];
}

/** Everything learnt about one case, as it stands now. */
export interface CaseState {
  readonly caseId: string;
  /** False while the opening entry has not arrived; the car and customer are then empty. */
  readonly opened: boolean;
  readonly openedAt?: string;
  readonly release: string;
  readonly knowledgeVersion?: string;
  readonly car: CaseCar;
  readonly customer: string;
  readonly vehicle: string;
  readonly plate?: string;
  readonly invented: boolean;
  /** What was told, in the order of telling. */
  readonly text: readonly string[];
  /** Photos in the order in which they came; the pictures themselves are kept by the server. */
  readonly photos: readonly (Pick<EntryOf<"photo">, "photo" | "width" | "height" | "caption" | "from"> & {
    /** Id of the entry that names it. */
    readonly entry: string;
  })[];
  readonly answers: readonly CaseAnswer[];
  readonly refused: readonly { readonly finding: string; readonly words: string }[];
  /** The state the car is in; undefined until somebody says so. */
  readonly setUp?: string;
  readonly notPossible: readonly { readonly check: string; readonly reason: string }[];
  readonly cautionsRead: readonly string[];
  /** Parts whose age is known, in the order in which they were entered. */
  readonly fitted: readonly (Pick<EntryOf<"fitted">, "part" | "place" | "atKm" | "yearsAgo"> & {
    /** Id of the entry that says so. */
    readonly entry: string;
  })[];
  /** What turns at which rate, as last entered. */
  readonly turning?: Pick<
    EntryOf<"turning">,
    "tyre" | "circumferenceMm" | "finalDrive" | "cylinders" | "measured"
  >;
  readonly notes: readonly string[];
  readonly verdict?: Pick<EntryOf<"verdict">, "suspects" | "proof" | "note" | "at" | "by">;
  /** What was advised before the car was seen, as last decided. */
  readonly advised?: Pick<
    EntryOf<"advised">,
    "level" | "said" | "p50" | "p90" | "parts" | "note" | "at" | "by"
  >;
  /** Who has the case; undefined: nobody. */
  readonly assigned?: { readonly name: string; readonly account?: string };
  readonly timeline: readonly TimelineItem[];
}
