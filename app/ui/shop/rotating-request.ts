import { parseTyreSize } from "../../../lib/car/tyre-size.ts";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { OrdersRequest } from "../../../lib/requests/orders-request.ts";
import { exactDistanceInKm, type Units } from "../../text/amounts.ts";
import { messageOf } from "../../text/message-of.ts";
import { readField } from "./read-fields.ts";

/** Most frequencies that the form takes. */
export const MOST_MEASURED = 4;

type Fields = Readonly<Record<string, string>>;
type Turning = NonNullable<CaseState["turning"]>;

/** The form of turning parts, read. */
export interface ReadTurning {
  /** Field id -> what is wrong and how to mend it. */
  readonly problems: Readonly<Record<string, string>>;
  /** Ready to be worked out; undefined while something is wrong or missing. */
  readonly request: OrdersRequest | undefined;
  /** What of it is a fact about the car. */
  readonly turning: Turning | undefined;
  /** What is still needed, in words. */
  readonly needs: string | undefined;
}

/** Reads the form; speeds are typed in the shown unit. */
export function readTurning(fields: Fields, units: Units): ReadTurning {
  const problems: Record<string, string> = {};
  const tyre = fields["tyre"]?.trim() ?? "";
  if (tyre !== "") {
    try {
      parseTyreSize(tyre);
    } catch (error) {
      problems["tyre"] = messageOf(error).replace(/^tyre: /, "");
    }
  }
  const read = (id: string, least: number, most: number, such: string, whole = false) =>
    readField(fields, problems, id, { least, most, such, whole });
  const circumferenceMm = read("circumference", 500, 5000, "1930");
  if (tyre !== "" && circumferenceMm !== undefined)
    problems["circumference"] = "Give the size or the circumference, not both: empty one of them.";
  const finalDrive = read("finalDrive", 0.5, 20, "3.7");
  const gearRatio = read("gear", 0.2, 20, "0.8");
  const cylinders = read("cylinders", 1, 16, "4", true);
  const rpm = read("rpm", 100, 20_000, "2500");
  const speed = read("speed", 1, 400, "100");
  const speedKmh = speed === undefined ? undefined : exactDistanceInKm(speed, units);
  const measured = Array.from({ length: MOST_MEASURED }, (_, i) => {
    const hz = read(`hz${i}`, 0.1, 2000, "13.5");
    const own = read(`speed${i}`, 1, 400, "80");
    const ownRpm = read(`rpm${i}`, 100, 20_000, "2500");
    if (hz === undefined) return undefined;
    const at = own === undefined ? {} : { speedKmh: exactDistanceInKm(own, units) };
    return { hz, ...at, ...(ownRpm !== undefined && { rpm: ownRpm }) };
  }).filter((m) => m !== undefined);
  const rolls = tyre !== "" || circumferenceMm !== undefined;
  if (Object.keys(problems).length > 0)
    return { problems, request: undefined, turning: undefined, needs: undefined };
  if (!rolls || speedKmh === undefined) {
    const missing = [...(rolls ? [] : ["the tyre size"]), ...(speedKmh === undefined ? ["the speed"] : [])];
    return { problems, request: undefined, turning: undefined, needs: `Give ${missing.join(" and ")}.` };
  }
  const wheel = {
    ...(tyre !== "" && { tyre }),
    ...(circumferenceMm !== undefined && { circumferenceMm }),
    ...(finalDrive !== undefined && { finalDrive }),
    ...(cylinders !== undefined && { cylinders }),
  };
  return {
    problems,
    needs: undefined,
    request: {
      ...wheel,
      speedKmh,
      ...(gearRatio !== undefined && { gearRatio }),
      ...(rpm !== undefined && { rpm }),
      measured,
    },
    turning: {
      ...wheel,
      measured: measured.map((m) => ({
        ...m,
        speedKmh: m.speedKmh ?? speedKmh,
        ...(gearRatio !== undefined && { gearRatio }),
        ...(m.rpm === undefined && m.speedKmh === undefined && rpm !== undefined && { rpm }),
      })),
    },
  };
}

/** What was kept in a case, as form fields. */
export function fieldsOfTurning(turning: Turning | undefined, units: Units): Fields {
  if (turning === undefined) return {};
  const { tyre, circumferenceMm, finalDrive, cylinders, measured } = turning;
  const fields: Record<string, string> = {};
  const put = (id: string, value: string | number | undefined) => {
    if (value !== undefined) fields[id] = String(value);
  };
  const shown = (kmh: number) => Number((kmh / exactDistanceInKm(1, units)).toFixed(2));
  put("tyre", tyre);
  put("circumference", circumferenceMm);
  put("finalDrive", finalDrive);
  put("cylinders", cylinders);
  put("gear", measured[0]?.gearRatio);
  for (const [i, m] of measured.slice(0, MOST_MEASURED).entries()) {
    put(`hz${i}`, m.hz);
    put(i === 0 ? "speed" : `speed${i}`, shown(m.speedKmh));
    put(i === 0 ? "rpm" : `rpm${i}`, m.rpm);
  }
  return fields;
}
