import type { Answer, AnswerState } from "../answers.ts";
import { parseFinding } from "../finding-id.ts";
import type { Grounded } from "../ground.ts";

/** What was said already, and what is not to be asked: by the words a person would use, not by the letter of an id. */
export interface Told {
  /** The state in which a feature of a complaint was answered, also when it was said of every complaint. */
  readonly feature: (complaint: string, feature: string) => AnswerState | undefined;
  /** Was anything said of the observation at this place, at a wider one, or anywhere? */
  readonly observation: (observation: string, place: string | undefined) => boolean;
  readonly finding: (finding: string) => boolean;
}

/** Looks through the answers once; `notAgain` are findings or questions that are left out as if they had been answered. */
export function whatWasTold(
  grounded: Grounded,
  answers: readonly Answer[],
  notAgain: readonly string[],
): Told {
  const states = new Map<string, AnswerState>(answers.map((a) => [a.finding, a.state]));
  const left = new Set(notAgain);
  const placed = [
    ...states.keys(),
    ...notAgain.filter((id) => id.includes("@") && !id.includes(":")),
  ].flatMap((id) => {
    const finding = parseFinding(grounded.knowledge, id);
    return finding.kind === "observation"
      ? [{ observation: finding.observation.id, place: finding.place }]
      : [];
  });
  return {
    feature: (complaint, feature) => states.get(`${complaint}:${feature}`) ?? states.get(feature),
    observation: (observation, place) =>
      left.has(observation) ||
      placed.some(
        (p) =>
          p.observation === observation &&
          (p.place === undefined || place === undefined || grounded.places.overlap(p.place, place)),
      ),
    finding: (finding) => states.has(finding) || left.has(finding),
  };
}
