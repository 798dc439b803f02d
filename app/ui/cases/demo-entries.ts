import { CaseCar, type Entry } from "../../../lib/case/entries.ts";
import type { DemoCaseRecord } from "../../../lib/knowledge/schema/compiled.ts";
import type { ReleaseName } from "../../knowledge/release-index.ts";
import { newEntry, newId } from "../../store/new-entry.ts";

/** A fresh case made from an invented one: opened, with the customer's words, nothing ticked. */
export function demoEntries(
  demo: DemoCaseRecord,
  release: ReleaseName,
  by: string,
): { readonly id: string; readonly entries: readonly Entry[] } {
  const id = newId();
  const opened = newEntry(
    id,
    {
      kind: "opened",
      release: release.sha256,
      knowledgeVersion: release.version,
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
