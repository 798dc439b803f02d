import { answerPlayRequest } from "../../requests/play-request.ts";
import { answerJson, REQUEST_HELP } from "../answer-json.ts";
import type { Command } from "../command.ts";

const HELP = `Use: cornerwise play [--lines] [options] < request.json

Turns free play or run-out into mm, inches and degrees, a depth of tread or lining
into mm and inches, and sets it beside the published limits, each with the rule that
it stands in. Reads one JSON request from
standard input, or many with --lines (one request a line, one answer a line, in
order; for a bad line an object {"error": {"code", "message"}}).

Request:
  {"quantity": "steering-rim",                what was measured: steering-rim,
                                              linkage, rim-run-out, tread-depth,
                                              lining-bonded or lining-riveted
   "value": 20, "unit": "mm",                 mm, in or deg
   "circle": {"value": 380, "unit": "mm"},    diameter measured on: the steering
                                              wheel, the tyre, the rim
   "rim": {"value": 16, "unit": "in"},        for rules that go by the rim
   "country": "GB",                           US, US-MO, GB, EU; left out: all
   "place": "front-left",                     for the finding
   "car": {"steering": "rack-hydraulic"}}     leaves out rules for other cars
Only quantity, value and unit are needed; degrees and some rules need the circle.

Answer:
  {"release", "quantity", "name", "how", "mm", "in", "deg",
   "limits": [{"id", "rule", "country", "applies", "note", "needs",
               "standing": "under|at|over|unknown", "most": {"mm", "in", "deg"},
               "least": {"mm", "in"}}],
   "finding": {"id", "value"}, "findingName", "decides"}
"how" says how it is measured. "most" is what the rule allows, "least" what it wants
left; "at" is exactly that.
"unknown": the rule goes by a diameter that was not given ("needs"). "finding" can be
put into a weigh request. The maker's figure decides; no answer says that a car is
fit to drive.
The whole schemas: cornerwise schema play-request, cornerwise schema play-answer.

${REQUEST_HELP}

Examples:
  echo '{"quantity": "steering-rim", "value": 1, "unit": "in",
         "circle": {"value": 15, "unit": "in"}}' | cornerwise play
  echo '{"quantity": "linkage", "value": 6, "unit": "mm", "place": "front-left"}' | cornerwise play
`;

/** `cornerwise play`: a movement in mm, inches and degrees beside the published limits. */
export const playCommand: Command = {
  name: "play",
  summary: "convert free play, run-out or a depth and set it beside the published limits",
  help: HELP,
  run: (args, io) =>
    answerJson("play", args, io, answerPlayRequest, `{"quantity": "linkage", "value": 6, "unit": "mm"}`),
};
