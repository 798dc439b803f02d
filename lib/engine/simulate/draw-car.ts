import { CornerwiseError } from "../../errors.ts";
import type { CompiledComplaint } from "../../knowledge/schema/compiled.ts";
import type { Grounded } from "../ground.ts";
import { showingStrength } from "../complaint-bit.ts";
import { complaintChance, pickByWeight } from "./complaint-chance.ts";
import type { FiredShowing, SimulatedCar } from "./simulated-car.ts";
import { toldFeatures } from "./told-features.ts";

/** How a car is drawn. */
export interface DrawOptions {
  /** A suspect (index) that is there and fires on the complaint. */
  readonly suspect?: number | undefined;
  /** Complaint id; left out, one by how often cars show it. */
  readonly complaint?: string | undefined;
  /** Features that the owner tells; 3 when left out. */
  readonly told?: number | undefined;
}

/** Draws tried before a complaint counts as one that cannot come about. */
const MOST_DRAWS = 200_000;

/**
 * Draws a car from a grounded model: suspects by their priors, the complaint by noisy-OR of those present and the leak,
 * features as told from whatever is heard.
 *
 * The complaint is chosen first and cars are drawn until one shows it, so that a weighing of what is told is right on
 * average. With several causes at once, what is heard is one of them, each as likely as the other.
 *
 * Errors: `unknown-id` for a complaint or suspect that is not there; `impossible-evidence` when the suspect shows no
 * complaint, or no car shows it.
 */
export function drawCar(world: Grounded, uniform: () => number, options: DrawOptions = {}): SimulatedCar {
  const complaint = chooseComplaint(world, uniform, options);
  const seed = Math.floor(uniform() * 2 ** 32);
  for (let draw = 0; draw < MOST_DRAWS; draw++) {
    const present = Uint8Array.from(world.prior, (p, i) => (uniform() < p || i === options.suspect ? 1 : 0));
    const fired: FiredShowing[] = [];
    for (const { suspect, showings } of world.links.get(complaint.id) ?? []) {
      if (present[suspect] !== 1) continue;
      for (const showing of showings) {
        if (uniform() < showing.strength.p) fired.push({ suspect, showing });
      }
    }
    const leaked = uniform() < complaint.leak;
    const wanted = options.suspect === undefined || fired.some((f) => f.suspect === options.suspect);
    if (!wanted || (fired.length === 0 && !leaked)) continue;
    const heard = fired[Math.floor(uniform() * (fired.length + (leaked ? 1 : 0)))];
    const told = toldFeatures(world, complaint, options.told ?? 3, seed, heard, uniform);
    return {
      world,
      seed,
      present,
      complaint,
      fired,
      leaked,
      heard,
      told: [{ finding: complaint.id, state: "present", by: "report" }, ...told],
    };
  }
  throw impossible(`No car drawn shows "${complaint.id}"; give it a leak or a cause.`);
}

function chooseComplaint(world: Grounded, uniform: () => number, options: DrawOptions): CompiledComplaint {
  const { complaints } = world.knowledge;
  if (options.complaint !== undefined) {
    const named = complaints.find((c) => c.id === options.complaint);
    if (named === undefined) {
      throw new CornerwiseError(
        "unknown-id",
        `"${options.complaint}" is no complaint of this knowledge; take one of its complaints.`,
        { id: options.complaint },
      );
    }
    return named;
  }
  const { suspect } = options;
  const weight = (complaint: CompiledComplaint): number => {
    if (suspect === undefined) return complaintChance(world, complaint);
    const link = world.links.get(complaint.id)?.find((l) => l.suspect === suspect);
    return link === undefined ? 0 : showingStrength(link.showings);
  };
  const chosen = pickByWeight(complaints, weight, uniform);
  if (chosen === undefined)
    throw impossible(`Suspect ${String(suspect)} shows no complaint, so no case can start from it.`);
  return chosen;
}

function impossible(message: string): CornerwiseError {
  return new CornerwiseError("impossible-evidence", message, {});
}
