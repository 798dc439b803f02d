import { answerOrdersRequest } from "../../requests/orders-request.ts";
import { answerJson, REQUEST_HELP } from "../answer-json.ts";
import type { Command } from "../command.ts";

const HELP = `Use: cornerwise orders [--lines] [options] < request.json

Works out at which frequencies the wheels, the propshaft and the engine of a car
can shake it, and what a frequency that was measured may be. Reads one JSON
request from standard input, or many with --lines (one request a line, one answer
a line, in order; for a bad line an object {"error": {"code", "message"}}).

An order is a number of vibrations a turn: the first order of a wheel comes once a
turn, the second twice. A tyre or rim that is out of balance gives the first, a
universal joint the second of the propshaft, cylinders that fire give the engine's
firing order (half the number of cylinders), one that does not gives half orders.

Request:
  {"tyre": "205/55R16",        what the tyre says; or "circumferenceMm": 1928,
                               measured: one turn of the wheel under load
   "speedKmh": 100,            or "speedMph"; by satellite, not by the dashboard
   "finalDrive": 3.08,         propshaft turns for one of the wheels
   "gearRatio": 1.0,           engine turns for one of the propshaft, in this gear
   "rpm": 3000,                engine speed; goes before gearRatio
   "cylinders": 4,             of a four-stroke engine
   "car": {"drive": "rear"},   as in cornerwise weigh; a front-wheel drive car has
                               no propshaft
   "measured": [{"hz": 14.3},  frequencies of one shake, at other speeds too:
                {"hz": 17.2, "speedKmh": 120, "resolutionHz": 0.5, "sampleHz": 60}],
   "tolerance": 0.04}          instead of the knowledge's own
Sizes read: ISO metric (205/55R16 91V, P225/50R16, 195/65ZR15), light truck
(LT245/75R16) and flotation (31x10.50R15LT); radial tyres only. For any other,
measure the circumference. Without finalDrive there are no propshaft orders, and
without rpm (or finalDrive and gearRatio) none of the engine.

Answer:
  {"release", "tyre": {"size", "designDiameterMm"}, "circumferenceMm", "turnsPerKm",
   "speedKmh", "rates": {"wheel", "propshaft", "engine"},
   "orders": [{"shaft", "order", "hz", "finding", "name"}],
   "measured": [{"hz", "speedKmh", "matches": [{..., "offPercent"}],
                 "folded": [{..., "showsAtHz"}]}],
   "fits": [{"shaft", "order", "finding"}], "findings": [{"id", "state"}],
   "apart": [{"shaft", "how"}]}
"rates" are turns a second. With "sampleHz", how often a second the sensor was read,
"folded" names orders too fast for it that would show at that frequency. "fits" are the orders that fit every measured frequency.
"findings" can be put into a weigh request; they are empty when what fits is not one
finding, and "apart" then says how to tell the shafts apart. A frequency says what
turns at that rate, not what is wrong with it.
The whole schemas: cornerwise schema orders-request, cornerwise schema orders-answer.

${REQUEST_HELP}

Examples:
  echo '{"tyre": "205/55R16", "speedKmh": 100, "measured": [{"hz": 14.3}]}' | cornerwise orders
  echo '{"tyre": "P235/75R15", "speedMph": 60, "finalDrive": 3.08, "car": {"drive": "rear"}}' | cornerwise orders
`;

/** `cornerwise orders`: what turns at which rate, and what a measured frequency may be. */
export const ordersCommand: Command = {
  name: "orders",
  summary: "work out wheel, propshaft and engine orders, and match a measured frequency",
  help: HELP,
  run: (args, io) =>
    answerJson("orders", args, io, answerOrdersRequest, `{"tyre": "205/55R16", "speedKmh": 100}`),
};
