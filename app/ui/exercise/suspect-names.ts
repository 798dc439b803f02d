import { type Grounded, repairOfSuspect } from "../../../lib/engine/index.ts";
import { capital, nameOfRepair, nameOfSuspect } from "../../text/names.ts";
import type { Pickable } from "../teach/pick-list.tsx";

const pickable = (id: string, name: string): Pickable => ({
  id,
  name: capital(name),
  words: name.toLowerCase(),
});

/** Every fault at every place of this car, by name. */
export function faultsOf({ knowledge, suspects }: Grounded): Pickable[] {
  return suspects.map(({ id }) => pickable(id, nameOfSuspect(knowledge, id)));
}

/** Every part of this car that may be at fault, once each, by name. */
export function partsOf({ knowledge, suspects }: Grounded): Pickable[] {
  return [...new Set(suspects.map(repairOfSuspect))].map((id) => pickable(id, nameOfRepair(knowledge, id)));
}
