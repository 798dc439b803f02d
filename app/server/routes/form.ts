import { PHOTO_FILE } from "../picture-limits.ts";
import { route } from "../route-description.ts";
import { FormAnswer, FormPhotoQuery, FormView, FormWords, SaidParams } from "../schemas/form.ts";

const FORM = { action: "answer-form", token: true } as const;
const GIVES = { status: 200, what: "The form as it stands now", body: FormView } as const;
const PROBLEMS = ["link-over", "too-many-tries", "case-removed", "no-such-case"] as const;

export const readForm = route({
  method: "GET",
  path: "/api/v1/form",
  summary: "What a customer is asked by a link; the token comes as `Authorization: Bearer`",
  ...FORM,
  gives: GIVES,
  problems: PROBLEMS,
});

export const answerForm = route({
  method: "POST",
  path: "/api/v1/form/answers",
  summary: "Answer the question by one of its choices. May be repeated",
  ...FORM,
  body: FormAnswer,
  gives: GIVES,
  problems: [...PROBLEMS, "question-over", "case-full"],
});

export const tellForm = route({
  method: "POST",
  path: "/api/v1/form/words",
  summary: "Say something in one's own words. May be repeated",
  ...FORM,
  body: FormWords,
  gives: GIVES,
  problems: [...PROBLEMS, "case-full"],
});

export const sendFormPhoto = route({
  method: "POST",
  path: "/api/v1/form/photos",
  summary: "Send a photo: JPEG, PNG or WebP, kept without place, time or camera. May be repeated",
  ...FORM,
  query: FormPhotoQuery,
  bytes: PHOTO_FILE,
  gives: GIVES,
  problems: [...PROBLEMS, "case-full", "photos-full", "bad-photo", "entry-differs"],
});

export const takeBackSaid = route({
  method: "DELETE",
  path: "/api/v1/form/answers/{id}",
  summary: "Take back what was said last by this form",
  ...FORM,
  params: SaidParams,
  gives: GIVES,
  problems: [...PROBLEMS, "bad-input", "not-the-last", "case-full"],
});

export const endForm = route({
  method: "POST",
  path: "/api/v1/form/done",
  summary: "Say that nothing more comes; the form stays open until its time is over",
  ...FORM,
  gives: GIVES,
  problems: PROBLEMS,
});
