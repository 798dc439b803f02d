import { answerWearRequest } from "../../requests/wear-request.ts";
import { answerJson, REQUEST_HELP } from "../answer-json.ts";
import type { Command } from "../command.ts";

const HELP = `Use: cornerwise wear [--lines] [options] < request.json

Says how likely each wear part of a car has failed by now, and how likely it fails
within the next kilometres, before anything is looked at. Reads one JSON request from
standard input, or many with --lines (one request a line, one answer a line, in
order; for a bad line an object {"error": {"code", "message"}}).

Request, every field optional:
  {"car": {"odometerKm": 120000, "ageYears": 9, "roads": "rough",
           "front": {"layout": "strut"}},
   "contexts": ["kerb-strike"],               what happened lately
   "fitted": [{"part": "front-damper", "atKm": 90000}],
                                              renewed parts ("place": one side only):
                                              odometer then, or "yearsAgo"; "atKm": 0
                                              for one that is known to be the first
   "aheadKm": [10000, 20000], "limit": 30}
Ids: cornerwise parts, cornerwise findings. Left out: the car is a typical one, and
every part as old as the car or a follower of such a one.

Answer:
  {"release", "km", "years", "leftOut",
   "wear": [{"suspect", "part", "fault", "place", "onCar", "now",
             "ahead": [{"km", "chance", "ifNeverRenewed"}],
             "life": {"unit", "characteristic", "shape", "basis", "source"},
             "age": {"km", "years", "ownAge"},
             "modifiers": [{"why", "life", "odds", "chance"}]}]}
"now" is the prior of cornerwise weigh: failed, and mended by nobody yet. "chance" is
that it fails within the distance; "ifNeverRenewed" the conditional Weibull failure of
one that is there, works, and is as old as "age". "life" holds the Weibull
characteristic life (63 % have failed by then) and shape, and where they come from;
"modifiers" multiply the life or the odds, each with the chance that it holds.
Most lives are common practice: no published Weibull figures of such parts are known
to us. A small chance is no leave to drive on: look at the part.
The whole schemas: cornerwise schema wear-request, cornerwise schema wear-answer.

${REQUEST_HELP}

Example:
  echo '{"car": {"odometerKm": 150000, "roads": "rough"}, "limit": 10}' | cornerwise wear
`;

/** `cornerwise wear`: chance of each wear part to have failed, and to fail within the next kilometres. */
export const wearCommand: Command = {
  name: "wear",
  summary: "say how likely each wear part has failed, and will within the next kilometres",
  help: HELP,
  run: (args, io) => answerJson("wear", args, io, answerWearRequest, `{"car": {"odometerKm": 120000}}`),
};
