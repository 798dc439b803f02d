import { openFindings } from "../batch.ts";
import type { ProposedCheck } from "../propose.ts";
import type { Policy, Situation } from "./policy.ts";

/** Any check that bears on the complaint, each as likely as the other. */
export const randomChoice: Policy = {
  name: "random",
  next: ({ proposed }, uniform) => proposed[Math.floor(uniform() * proposed.length)],
};

/** One list for every complaint: set-up by set-up in the order of the knowledge, the cheap ones of each first. */
export const fixedChecklist: Policy = {
  name: "fixed checklist",
  next: ({ grounded, proposed }) => {
    const order = new Map(grounded.knowledge.setUps.setUps.map((s, i) => [s.id, i]));
    const rank = (p: ProposedCheck): number => order.get(p.setUp) ?? order.size;
    return first(proposed, (a, b) => rank(a) - rank(b) || a.minutes - b.minutes);
  },
};

/** Take the likeliest suspect that can still be checked, and the check that shows it best. */
export const likeliestFirst: Policy = {
  name: "likeliest suspect first",
  next: (situation) => {
    const shown = shownBy(situation);
    for (const { suspect } of situation.weighing.weighed.ranking) {
      const shows = (p: ProposedCheck): number => shown.get(p.id)?.get(suspect.index) ?? 0;
      const able = situation.proposed.filter((p) => shows(p) > 0);
      if (able.length > 0) return first(able, (a, b) => shows(b) - shows(a) || a.minutes - b.minutes);
    }
    return situation.proposed[0];
  },
};

/** Largest chance over cost: the chance that a check shows the suspect that it tells most of, by its minutes. */
export const chanceOverCost: Policy = {
  name: "p/c",
  next: (situation) => {
    const shown = shownBy(situation);
    const explains = situation.weighing.explanation?.involved;
    const score = (p: ProposedCheck): number => {
      let most = 0;
      for (const [suspect, shows] of shown.get(p.id) ?? [])
        most = Math.max(most, shows * (explains?.[suspect] ?? 0));
      return most / (p.minutes + p.setUpMinutes);
    };
    return first(situation.proposed, (a, b) => score(b) - score(a));
  },
};

/** Most information, whatever it costs. */
export const gainAlone: Policy = {
  name: "gain alone",
  next: ({ proposed }) => first(proposed, (a, b) => b.gainBits - a.gainBits),
};

/** Most information a minute of checking; bringing the car into the set-up counts for nothing. */
export const gainPerMinute: Policy = {
  name: "gain per minute, set-up free",
  next: ({ proposed }) => first(proposed, (a, b) => b.gainBits / b.minutes - a.gainBits / a.minutes),
};

/** The first of what is proposed: most information a minute, set-up included. */
export const shippedChoice: Policy = {
  name: "shipped",
  next: ({ proposed }) => proposed[0],
};

/** For each check, how strongly it shows each suspect: the largest chance of any grade. */
function shownBy({ grounded, answers, proposed }: Situation): Map<string, Map<number, number>> {
  const settled = new Set(answers.flatMap((a) => (a.by === "check" ? [a.finding] : [])));
  const shown = new Map<string, Map<number, number>>();
  for (const check of proposed) {
    const own = new Map<number, number>();
    for (const { parents, q } of openFindings(grounded, check, settled)) {
      parents.forEach((suspect, k) => {
        own.set(suspect, Math.max(own.get(suspect) ?? 0, 1 - (q[0]?.[k] ?? 1)));
      });
    }
    shown.set(check.id, own);
  }
  return shown;
}

/** The first by an order, ties by id. */
function first(
  proposed: readonly ProposedCheck[],
  order: (a: ProposedCheck, b: ProposedCheck) => number,
): ProposedCheck | undefined {
  return proposed.toSorted((a, b) => order(a, b) || (a.id < b.id ? -1 : 1))[0];
}
