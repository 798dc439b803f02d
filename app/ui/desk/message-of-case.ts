import type { CaseState } from "../../../lib/case/case-state.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { customerMessage, type Message, type MessageParts } from "../../../lib/words/index.ts";
import type { BeforeSeen, Booked } from "../../engine/protocol.ts";
import { ENOUGH_VISITS } from "./use-booking.ts";

/**
 * The message to the customer of a case: by the decision that was recorded, else by what is worked out; undefined while
 * there is neither.
 */
export function messageOfCase(
  knowledge: Knowledge,
  state: CaseState,
  before: BeforeSeen | undefined,
  booked: Booked | undefined,
  signed: string,
): Message | undefined {
  const { advised } = state;
  const levels = knowledge.advice?.levels ?? [];
  const id = advised?.level ?? before?.drive.level;
  const index = levels.findIndex((level) => level.id === id);
  const level = levels[index];
  const say = advised?.said ?? level?.say;
  if (level === undefined || say === undefined) return undefined;
  const visit = visitOf(state, booked);
  const parts: MessageParts = {
    customer: state.customer,
    vehicle: state.vehicle,
    ...(state.plate !== undefined && { plate: state.plate }),
    told: state.text,
    advice: level.name,
    say,
    comes: index === 0 ? "fetched" : index === levels.length - 1 ? "brought" : "waits",
    stopIf: knowledge.advice?.stopIf ?? [],
    ...(visit !== undefined && { visit }),
    signed,
    invented: state.invented,
  };
  return customerMessage(parts);
}

function visitOf({ advised }: CaseState, booked: Booked | undefined): MessageParts["visit"] {
  const { p50, p90 } = advised ?? {};
  if (p50 !== undefined && p90 !== undefined) return { p50, p90 };
  if (booked === undefined || booked.booking.visits < ENOUGH_VISITS) return undefined;
  return booked.booking.whole;
}
