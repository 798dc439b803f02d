import { route } from "../route-description.ts";
import { Board, SendStatements, SentStatements, Statements } from "../schemas/board.ts";
import { AttemptFilter } from "../schemas/exercises.ts";

export const readBoard = route({
  method: "GET",
  path: "/api/v1/attempts/board",
  action: "see-board",
  summary: "Attempts at the asker's exercises added up: by exercise, by trainee, what was overlooked",
  query: AttemptFilter,
  gives: { status: 200, what: "The board", body: Board },
});

export const readStepsTable = route({
  method: "GET",
  path: "/api/v1/attempts/steps.csv",
  action: "see-board",
  summary: "The steps of attempts that have ended as a table",
  query: AttemptFilter,
  gives: { status: 200, what: "Comma-separated values (RFC 4180)", mediaType: "text/csv" },
});

export const readStatements = route({
  method: "GET",
  path: "/api/v1/attempts/statements.json",
  action: "see-board",
  summary: "Attempts as statements of the Experience API (IEEE 9274.1.1)",
  query: AttemptFilter,
  gives: { status: 200, what: "The statements", body: Statements },
});

export const sendStatements = route({
  method: "POST",
  path: "/api/v1/attempts/statements",
  action: "see-board",
  summary: "Send a page of attempts to the record store of the owner; sent again, nothing is there twice",
  body: SendStatements,
  gives: { status: 200, what: "What became of them", body: SentStatements },
  problems: ["no-record-store"],
});
