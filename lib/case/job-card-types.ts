/** A finding on the job card: what was found, how, and what that says of the car. */
export interface CardFinding {
  readonly finding: string;
  readonly name: string;
  readonly state: "present" | "absent" | "unknown";
  readonly level?: string;
  /** "7 mm movement at the tread" */
  readonly measured?: string;
  readonly by: "report" | "check";
  readonly check?: string;
}

/** A part that is renewed along with the faulty one. */
export interface CardPaired {
  readonly part: string;
  readonly where: string;
  readonly why: string;
}

/** The work on one suspect of the verdict. */
export interface CardWork {
  readonly suspect: string;
  readonly name: string;
  readonly steps: readonly string[];
  readonly minutes: number;
  readonly paired: readonly CardPaired[];
  readonly oneUse: readonly string[];
  readonly tightenAtRideHeight: boolean;
  readonly alignmentAfter: boolean;
  readonly lookAtToo: readonly string[];
  readonly cautions: readonly string[];
}

/** How grave a fault is, in the words of Directive 2014/45/EU. */
export interface CardSeverity {
  readonly suspect: string;
  readonly name: string;
  readonly word: "minor" | "major" | "dangerous";
  readonly item?: string;
  readonly reason: string;
  readonly basis: string;
}

export interface CardSuspect {
  readonly suspect: string;
  readonly name: string;
  readonly present: number;
}

/** What the customer was advised before the car was seen. */
export interface CardAdvice {
  readonly level: string;
  readonly said: string;
  /** Minutes within which half and nine of ten of such visits end. */
  readonly p50?: number;
  readonly p90?: number;
  readonly parts: readonly string[];
  readonly note?: string;
  readonly by: string;
  readonly at: string;
}

/** The printable record of a case: plain data, in words that a screen or a printer sets as they are. */
export interface JobCard {
  readonly caseId: string;
  readonly openedAt?: string;
  readonly customer: string;
  readonly vehicle: string;
  readonly plate?: string;
  /** Set when the case is invented, for the head of the page. */
  readonly inventedNotice?: string;
  /** What was complained of: in the customer's words, and the complaints read from them with their features. */
  readonly complaint: { readonly words: readonly string[]; readonly told: readonly CardFinding[] };
  readonly contexts: readonly string[];
  readonly advised?: CardAdvice;
  readonly found: readonly CardFinding[];
  readonly verdict?: {
    readonly suspects: readonly { readonly suspect: string; readonly name: string }[];
    readonly proof: readonly CardFinding[];
    readonly note?: string;
    readonly by: string;
    readonly at: string;
    /** Set when a named suspect has no decisive finding present among what was checked by hand. */
    readonly unproven: readonly string[];
  };
  readonly work: readonly CardWork[];
  readonly workMinutes: number;
  readonly severity: readonly CardSeverity[];
  readonly cautions: readonly string[];
  readonly alsoLikely: readonly CardSuspect[];
  /** Checked and present, but caused by nothing in the verdict. */
  readonly unexplained: readonly CardFinding[];
  /** What stays open, one sentence each. */
  readonly open: readonly string[];
  /** What to do at once; empty when nothing dangerous is likely. */
  readonly stopNotices: readonly string[];
  readonly release: { readonly version: string; readonly sha: string };
  readonly statements: readonly string[];
}
