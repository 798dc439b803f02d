import { CaseCar, type Entry } from "../../../lib/case/entries.ts";
import type { DemoCaseRecord, Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { newEntry, newId } from "../../store/new-entry.ts";

/** A fresh case made from an invented one: opened, with the customer's words, nothing ticked. */
export function demoEntries(
  demo: DemoCaseRecord,
  knowledge: Knowledge,
  by: string,
): { readonly id: string; readonly entries: readonly Entry[] } {
  const id = newId();
  const opened = newEntry(
    id,
    {
      kind: "opened",
      release: knowledge.version,
      knowledgeVersion: knowledge.version,
      car: CaseCar.parse(demo.car),
      customer: demo.customer,
      vehicle: demo.vehicle,
      plate: demo.plate,
      invented: true,
    },
    by,
  );
  return { id, entries: [opened, newEntry(id, { kind: "told", text: demo.text }, by)] };
}
