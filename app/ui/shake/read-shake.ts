import { atMeanSpeed, heldSpeed, type HeldSpeed } from "../../../lib/car/held-speed.ts";
import { type Gaps, readRecording, type Recording, recordingGaps } from "../../../lib/car/recording.ts";
import { readRecordingCsv } from "../../../lib/car/recording-csv.ts";
import type { VibrationPeak, VibrationSpectrum } from "../../../lib/car/vibration-peaks.ts";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import {
  answerOrdersRequest,
  type OrdersAnswer,
  type OrdersRequest,
} from "../../../lib/requests/orders-request.ts";
import type { PeaksAsked } from "../../engine/peaks.worker.ts";
import { exactDistanceInKm, type Units } from "../../text/amounts.ts";
import { messageOf } from "../../text/message-of.ts";
import { readTurning } from "../shop/rotating-request.ts";

type Fields = Readonly<Record<string, string>>;
type Turning = NonNullable<CaseState["turning"]>;

/** Most frequencies that an entry of a case holds. */
const MOST_KEPT = 20;

/** A recording as it is looked through. */
export interface Taken {
  readonly recording: Recording;
  /** Its own clock, and that of its mean speed where the speed is known and even enough. */
  readonly asked: PeaksAsked;
  /** How the speed was held, where the recording tells and it is asked for. */
  readonly held: HeldSpeed | undefined;
  readonly gaps: Gaps;
}

/** A kept recording, ready to be looked through; empty when there is none, and why when it cannot be read. */
export function takeRecording(
  knowledge: Knowledge,
  csv: string,
  byGps: boolean,
): { readonly taken?: Taken; readonly failed?: string } {
  if (csv === "") return {};
  try {
    const recording = readRecording(readRecordingCsv(csv));
    const apart = toleranceOfWheels(knowledge);
    const held = byGps ? heldSpeed(recording, apart) : undefined;
    const follow = held !== undefined && held.held !== "uneven";
    const asked: PeaksAsked = { clocks: [recording, ...(follow ? [atMeanSpeed(recording)] : [])], apart };
    return { taken: { recording, asked, held, gaps: recordingGaps(recording) } };
  } catch (error) {
    return { failed: messageOf(error) };
  }
}

/** By how much of itself a frequency may be off a wheel order. */
function toleranceOfWheels(knowledge: Knowledge): number {
  const wheel = knowledge.orders.shafts.find(({ shaft }) => shaft === "wheel");
  return wheel?.tolerance ?? Math.min(...knowledge.orders.shafts.map(({ tolerance }) => tolerance));
}

/** The form, without the frequencies that were typed on the screen of turning parts, at the speed of the recording if it has one. */
export function readShakeForm(fields: Fields, held: HeldSpeed | undefined, units: Units) {
  const own = Object.entries(fields).filter(([id]) => !/^(hz|speed|rpm)\d$/.test(id));
  const speed =
    held === undefined
      ? {}
      : { speed: String(Number((held.meanKmh / exactDistanceInKm(1, units)).toFixed(2))) };
  return readTurning({ ...Object.fromEntries(own), ...speed }, units);
}

/** Whether the form holds frequencies that somebody typed: others than the case has already. */
export function holdsFrequencies(fields: Fields, ofCase: Fields): boolean {
  return Object.entries(fields).some(
    ([id, text]) => /^hz\d$/.test(id) && text.trim() !== "" && text !== ofCase[id],
  );
}

/** A peak, and what of the car may shake so; no answer while tyre or speed is not known. */
export interface LookedAt {
  readonly peak: VibrationPeak;
  readonly answer: OrdersAnswer | undefined;
}

/** Each peak by itself: two peaks of one recording are two things that shake, not one that was measured twice. */
export function lookAtPeaks(
  knowledge: Knowledge,
  car: OrdersRequest["car"],
  { peaks, highestHz }: VibrationSpectrum,
  request: OrdersRequest | undefined,
): LookedAt[] {
  return peaks.map((peak) => {
    if (request === undefined) return { peak, answer: undefined };
    const { hz, resolutionHz } = peak;
    const measured = [{ hz, resolutionHz, sampleHz: 2 * highestHz }];
    return { peak, answer: answerOrdersRequest(knowledge, { ...request, car, measured }) };
  });
}

/** What turns and at which rate, with the peaks in front of what was measured before; undefined when the case has it all. */
export function turningWithPeaks(
  { turning, request }: Pick<ReturnType<typeof readTurning>, "turning" | "request">,
  peaks: readonly VibrationPeak[],
  former: CaseState["turning"],
): Turning | undefined {
  if (turning === undefined || request?.speedKmh === undefined || request.speedKmh === null) return undefined;
  const { speedKmh, gearRatio, rpm } = request;
  const found = peaks.map(({ hz, amplitude }) => ({
    hz: Number(hz.toFixed(2)),
    speedKmh,
    ...(typeof gearRatio === "number" && { gearRatio }),
    ...(typeof rpm === "number" && { rpm }),
    amplitude: Number(amplitude.toPrecision(3)),
  }));
  const before = former?.measured ?? [];
  const same = (a: Turning["measured"][number], b: Turning["measured"][number]) =>
    a.hz === b.hz && a.speedKmh === b.speedKmh && a.rpm === b.rpm && a.gearRatio === b.gearRatio;
  const wheelSame = (["tyre", "circumferenceMm", "finalDrive", "cylinders"] as const).every(
    (key) => turning[key] === former?.[key],
  );
  if (wheelSame && found.every((f) => before.some((b) => same(f, b)))) return undefined;
  const others = before.filter((b) => !found.some((f) => same(f, b)));
  return { ...turning, measured: [...found, ...others].slice(0, MOST_KEPT) };
}
