import { answerDoubtRequest } from "../../requests/doubt-request.ts";
import { answerJson, REQUEST_HELP } from "../answer-json.ts";
import type { Command } from "../command.ts";

const HELP = `Use: cornerwise doubt [--lines] [options] < request.json

Says how far a ranking can be trusted: whether its leader holds when the weights of
the knowledge move within their own doubt, which answer does not fit the others, what
each answer added or took away, and which check results would change the picture.
Reads one JSON request from standard input, or many with --lines (one request a line,
one answer a line, in order; for a bad line an object {"error": {"code", "message"}}).

Request: as for cornerwise weigh, and
  {"draws": 200, "seed": 1, "suspect": "fault@place"}
The same seed gives the same answer. suspect: the one to explain; left out, the leader.

Answer:
  {"release",
   "steadiness": {"kind", "suspect", "share", "low", "high", "draws",
                  "rivals": [{"suspect", "share"}], "say"},
   "misfit": {"conflict", "answers": [{"finding", "state", "givenOthers", "alone",
              "conflict", "misread", "leaderWithout"}], "lookAgain", "unexplained",
              "notInKnowledge", "say"},
   "why": {"suspect", "prior", "present",
           "answers": [{"finding", "state", "logOdds", "ifTakenBack", "say"}]},
   "mindChangers": [{"check", "name", "probability", "leader", "explains", "say"}]}
share: of the draws, those in which the leader stays in front. misread: chance that an
answer is the wrong way round; nothing is changed by itself, look again. logOdds:
natural log-odds, they add up to the change from prior to present. An answer that fits
is no proof, and nothing here says that a car is fit to drive.
The whole schemas: cornerwise schema doubt-request, cornerwise schema doubt-answer.

${REQUEST_HELP}

Example:
  echo '{"text": "clunk from the front left over small bumps"}' | cornerwise doubt
`;

/** `cornerwise doubt`: how far a ranking can be trusted. */
export const doubtCommand: Command = {
  name: "doubt",
  summary: "say how steady a ranking is, what does not fit, and what would change it",
  help: HELP,
  run: (args, io) => answerJson("doubt", args, io, answerDoubtRequest, `{"text": "..."}`),
};
