import type { z } from "zod";
import { PHOTO_LIMITS } from "../../../lib/store/index.ts";
import type { LayQuestion } from "../../../lib/engine/index.ts";
import type { FormView } from "../schemas/form.ts";
import { formCase, type FormCase } from "./form-case.ts";
import type { Link } from "../../../lib/store/index.ts";
import type { Server } from "../server.ts";
import { weighedForm, type WeighedForm } from "./weighed-form.ts";

/** Questions that one form asks at most: more and people leave off (common practice, no source). */
export const MOST_QUESTIONS = 8;

export type View = z.output<typeof FormView>;

/** The question to be asked now; undefined when enough was asked or nothing is worth asking. */
export function openQuestion({ said }: FormCase, { open }: WeighedForm): LayQuestion | undefined {
  const answered = said.filter(({ kind }) => kind === "answer").length;
  return answered < MOST_QUESTIONS ? open[0] : undefined;
}

/** What the customer sees of the case: the car's name, what they said, what is asked next, what to do. Nothing else of it. */
export async function formView(server: Server, link: Link): Promise<View> {
  const held = await formCase(server, link);
  const weighed = await weighedForm(held.state);
  const { state, said } = held;
  const { advice, stop } = weighed;
  return {
    words: link.words,
    car: state.vehicle,
    invented: state.invented,
    expiresAt: link.expiresAt,
    said: said.map(({ id, kind, asked = null, text }) => ({ id, kind, asked, text })),
    question: questionView(openQuestion(held, weighed), weighed),
    most: MOST_QUESTIONS,
    photosLeft: Math.max(0, PHOTO_LIMITS.ofCase - state.photos.length),
    advice:
      advice === undefined ? null : { stop, name: advice.name, say: advice.say, stopIf: [...advice.stopIf] },
    done: link.doneAt !== null,
  };
}

function questionView(question: LayQuestion | undefined, { pictures }: WeighedForm): View["question"] {
  if (question === undefined) return null;
  const { id, question: text, help = null, example = null, picture, steps, cautions, choices } = question;
  return {
    ...{ id, text, help, example },
    picture: pictures.find((one) => one.id === picture) ?? null,
    steps: [...steps],
    cautions: [...cautions],
    choices: choices.map(({ label }) => label),
  };
}
