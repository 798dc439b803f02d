import type { CarInput } from "../../lib/car/car.ts";
import type { Usage } from "../../lib/car/usage.ts";
import type { Urgency } from "../../lib/case/case-urgency.ts";
import type { Situation, WeighedState } from "../../lib/case/situation.ts";
import type { Advice } from "../../lib/knowledge/schema/advice.ts";
import type {
  Answer,
  AskNextOptions,
  Batch,
  Booking,
  CourseOptions,
  CostOverrides,
  Decision,
  DriveAdvice,
  LayQuestion,
  PartReady,
  ProposedCheck,
  ProposeOptions,
  Steadiness,
  StopSignal,
  WearLine,
  WearOptions,
  Bounds,
  Weighed,
  Why,
} from "../../lib/engine/index.ts";
import type { Found as FoundRecord, Proposal, SideWords, Traffic } from "../../lib/words/index.ts";

export type { Situation };

/** A suspect as the screens show it. */
export interface Leader {
  readonly id: string;
  readonly part: string;
  readonly fault: string;
  readonly place: string;
  readonly name: string;
  readonly explains: number;
  readonly present: number;
  readonly proven: boolean;
}

/** One line of the ranking: a suspect, or one fault at places that nothing tells apart yet. */
export interface Row {
  readonly id: string;
  readonly name: string;
  readonly explains: number;
  readonly presentBounds?: Bounds | undefined;
  readonly proven: boolean;
  readonly members: readonly Leader[];
}

export interface Ranked extends Omit<Weighed, "ranking"> {
  readonly rows: readonly Row[];
  readonly leaders: readonly Leader[];
}

export interface NextSteps {
  readonly checks: readonly ProposedCheck[];
  readonly stop: StopSignal;
}

/** What one result of a check would do. */
export interface Preview {
  readonly answers: readonly Answer[];
  readonly probability: number;
  readonly leaders: readonly Leader[];
  readonly notInKnowledge: number;
}

/** A search result of any kind. */
export interface Found {
  readonly kind: "finding" | "check";
  readonly id: string;
  readonly name: string;
}

/** How likely each wear part of a car has failed and will, and what the car is taken to have run. */
export interface Wear {
  readonly used: Usage;
  readonly lines: readonly WearLine[];
}

/** How far the ranking can be trusted, in words. */
export interface Doubted {
  readonly steady: { readonly kind: Steadiness["kind"]; readonly words: string } | undefined;
  /** The answer that does not fit; it stays as it is until a person changes it. */
  readonly lookAgain:
    | { readonly finding: string; readonly by: Answer["by"]; readonly words: string }
    | undefined;
  readonly unexplained: string | undefined;
}

/** A result of a check that would put another suspect in front. */
export interface MindChange {
  readonly check: string;
  readonly name: string;
  /** Asked, not done: it has no card of its own unless it is proposed. */
  readonly isQuestion: boolean;
  readonly probability: number;
  readonly words: string;
}

/** What is said before anybody has seen the car. */
export interface BeforeSeen {
  readonly drive: DriveAdvice;
  readonly parts: readonly PartReady[];
}

/** How long to book, from the visits played so far. */
export interface Booked {
  readonly booking: Booking;
  /** Checking and repairing of each visit. Units: minutes. */
  readonly whole: readonly number[];
}

/** Questions to the worker and what each is answered with. */
export interface Questions {
  weigh: { ask: Situation; answer: Ranked };
  propose: { ask: Situation & { readonly options: ProposeOptions }; answer: NextSteps };
  preview: { ask: Situation & { readonly proposed: ProposedCheck }; answer: readonly Preview[] };
  /** Repairing, checking on and handing over against each other, by the workshop's own figures. */
  decide: {
    ask: Situation & { readonly options: ProposeOptions; readonly own: CostOverrides };
    answer: Decision;
  };
  /** Checks to make in one set-up; undefined when none is worth it. */
  batch: { ask: Situation & { readonly options: ProposeOptions }; answer: Batch | undefined };
  wear: { ask: { readonly car: CarInput; readonly options: WearOptions }; answer: Wear };
  /** How far the ranking can be trusted; undefined when newer answers came while it was worked out. */
  doubt: { ask: Situation; answer: Doubted | undefined };
  /** Results of the checks at hand that would put another suspect in front. */
  mind: {
    ask: Situation & { readonly options: ProposeOptions };
    answer: readonly MindChange[];
  };
  /** The next questions for a customer, best first. */
  questions: { ask: Situation & { readonly options: AskNextOptions }; answer: readonly LayQuestion[] };
  /** Undefined when the knowledge of the case holds no such advice. */
  advise: { ask: Situation & { readonly own: CostOverrides }; answer: BeforeSeen | undefined };
  /** From so many visits; undefined when newer answers came while they were played, or nothing is complained of. */
  book: {
    ask: Situation & {
      readonly options: Omit<CourseOptions, "costs" | "uniform">;
      readonly own: CostOverrides;
      readonly visits: number;
    };
    answer: Booked | undefined;
  };
  /** How urgent a case of the list is; `advice` stands in for a release that holds none. */
  urgency: { ask: { readonly state: WeighedState; readonly advice: Advice }; answer: Urgency };
  why: { ask: Situation & { readonly suspect: string }; answer: Why };
  /** A check that was picked by name, as it would be proposed; undefined when this car cannot have it. */
  open: {
    ask: Situation & { readonly id: string; readonly setUp: string | undefined };
    answer: ProposedCheck | undefined;
  };
  read: {
    ask: { readonly text: string; readonly traffic: Traffic | undefined };
    answer: { readonly proposals: readonly Proposal[]; readonly sides: readonly SideWords[] };
  };
  search: { ask: { readonly query: string }; answer: readonly Found[] };
  /** Records of every kind that have a page. */
  find: { ask: { readonly query: string }; answer: readonly FoundRecord[] };
}

export type Kind = keyof Questions;
