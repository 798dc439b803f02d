import { answerWeighRequest } from "../../requests/weigh-request.ts";
import { answerJson, REQUEST_HELP } from "../answer-json.ts";
import type { Command } from "../command.ts";

const HELP = `Use: cornerwise weigh [--lines] [options] < request.json

Ranks the suspects behind a complaint and names the next checks. Reads one JSON
request from standard input, or many with --lines (one request a line; one answer
a line, in order; for a bad line an object {"error": {"code", "message"}}).

Request, every field optional:
  {"car": {"drive": "front|rear|all", "front": {"layout": "strut"},
           "odometerKm": 120000, "ageYears": 9},
   "text": "owner's words",
   "findings": [{"id": "noise:small-bumps", "state": "present|absent"}],
   "limit": 10}
Findings read from the text are taken as accepted reports; those under "findings"
as checked by hand, unless they say "by": "report". Ids: cornerwise findings.
Further fields (set-up, who asks, grades, values): cornerwise schema weigh-request.

Answer:
  {"release", "read": [{"finding", "name", "state", "words"}],
   "ranking": [{"suspect", "part", "names", "fault", "place", "probability"}],
   "notInKnowledge", "next": [{"check", "name", "minutes", "setUp", "gainBits"}]}
probability is the chance that the suspect explains the complaint; "present" the
chance that the fault is there. Nothing in an answer says that a car is fit to drive.
The whole schema: cornerwise schema weigh-answer.

${REQUEST_HELP}

Example:
  echo '{"text": "clunk from the front left over small bumps"}' | cornerwise weigh
`;

/** `cornerwise weigh`: requests in, rankings out. */
export const weighCommand: Command = {
  name: "weigh",
  summary: "rank the suspects behind a complaint and name the next checks",
  help: HELP,
  run: (args, io) => answerJson("weigh", args, io, answerWeighRequest, `{"text": "..."}`),
};
