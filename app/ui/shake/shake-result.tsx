"use client";
import { heldSpeed } from "../../../lib/car/held-speed.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { answerOrdersRequest, type OrdersAnswer } from "../../../lib/requests/orders-request.ts";
import { usePeaks } from "../../engine/use-peaks.ts";
import type { OpenCase } from "../../store/use-case.ts";
import type { Units } from "../../text/amounts.ts";
import { messageOf } from "../../text/message-of.ts";
import type { ReadTurning } from "../shop/rotating-request.ts";
import { TellApart } from "../shop/tell-apart.tsx";
import { TurningTakeOver } from "../shop/turning-take-over.tsx";
import { PeakTable } from "./peak-table.tsx";
import { lookAtPeaks, type LookedAt, type Taken, turningWithPeaks } from "./read-shake.ts";
import { SpectrumPlot } from "./spectrum-plot.tsx";
import { OutOfSight } from "./out-of-sight.tsx";
import { SpeedSaid, TypedSpeed } from "./speed-said.tsx";

interface Props {
  readonly knowledge: Knowledge;
  readonly taken: Taken;
  readonly read: ReadTurning;
  readonly open: OpenCase | undefined;
  readonly units: Units;
  /** The figures are in the case now. */
  readonly onKept: () => void;
}

/** What of a recording shakes, as a drawing and in words, and taking it over into the case. */
export function ShakeResult(props: Props) {
  const { knowledge, taken, read, open } = props;
  const { spectrum, clock, busy, failed } = usePeaks(taken.asked);
  if (failed !== undefined)
    return (
      <p className="trouble" role="alert">
        The vibrations could not be worked out: {failed}
      </p>
    );
  if (busy || spectrum === undefined) return <p role="status">Looking for what shakes ...</p>;
  let looked: readonly LookedAt[];
  let answer: OrdersAnswer | undefined;
  try {
    const car = open?.state.car ?? {};
    looked = lookAtPeaks(knowledge, car, spectrum, read.request);
    answer = read.request && answerOrdersRequest(knowledge, { ...read.request, car });
  } catch (error) {
    return (
      <p className="trouble" role="alert">
        {messageOf(error)}
      </p>
    );
  }
  return <Looked {...props} spectrum={spectrum} looked={looked} answer={answer} followed={clock === 1} />;
}

function Looked({
  knowledge,
  taken,
  read,
  open,
  units,
  onKept,
  spectrum,
  looked,
  answer,
  followed,
}: Props & {
  readonly spectrum: NonNullable<ReturnType<typeof usePeaks>["spectrum"]>;
  readonly looked: readonly LookedAt[];
  /** What turns at which rate; undefined while tyre or speed is not known. */
  readonly answer: OrdersAnswer | undefined;
  /** The spectrum is that of the mean speed. */
  readonly followed: boolean;
}) {
  const { recording, gaps } = taken;
  const { peaks, highestHz } = spectrum;
  const samples = recording.times.length;
  const seconds = (recording.times.at(-1) ?? 0) - (recording.times[0] ?? 0);
  // Told with what the tyre says of it: how sharp a line can be goes by its circumference.
  const held =
    taken.held === undefined || answer === undefined
      ? taken.held
      : heldSpeed(taken.recording, taken.asked.apart, answer.circumferenceMm);
  const uneven = held?.held === "uneven";
  const findings = [
    ...new Set(looked.flatMap((l) => l.answer?.fits.flatMap(({ finding }) => finding ?? []) ?? [])),
  ];
  const keep = open && turningWithPeaks(read, peaks, open.state.turning);
  const apart = looked.flatMap((l) => l.answer?.apart ?? []);
  const shafts = apart.filter((a, i) => apart.findIndex(({ shaft }) => shaft === a.shaft) === i);
  return (
    <>
      <p className="small">
        {samples} readings in {seconds.toFixed(1)} s: {Math.round(2 * highestHz)} a second, so nothing above{" "}
        {Math.round(highestHz)} Hz can be seen, and what is faster shows as if it were slower.
        {gaps.count > 0 &&
          ` ${gaps.seconds.toFixed(1)} s are missing in ${gaps.count} ${gaps.count === 1 ? "gap" : "gaps"}: the screen was off, or something else was in front.`}
      </p>
      {held !== undefined && <SpeedSaid speed={held} followed={followed} units={units} />}
      {held === undefined && read.request !== undefined && (
        <TypedSpeed request={read.request} units={units} />
      )}
      {read.needs !== undefined && (
        <p className="notice" role="status">
          {read.needs} Then each peak is named.
        </p>
      )}
      <SpectrumPlot
        knowledge={knowledge}
        spectrum={spectrum}
        samples={samples}
        orders={answer?.orders ?? []}
      />
      {peaks.length === 0 ? (
        <p role="status">
          No steady vibration stands out. Press the phone on harder, hold the speed at which it shakes most,
          or record for longer.
        </p>
      ) : (
        <PeakTable knowledge={knowledge} looked={looked} highestHz={highestHz} />
      )}
      {answer !== undefined && (
        <OutOfSight knowledge={knowledge} answer={answer} highestHz={highestHz} units={units} />
      )}
      <TellApart knowledge={knowledge} apart={shafts} />
      {open !== undefined && peaks.length > 0 && answer !== undefined && !uneven && (
        <TurningTakeOver
          knowledge={knowledge}
          open={open}
          findings={findings}
          keep={keep}
          // With nothing put into the case, the form still holds the one speed that this recording was read at.
          onKept={() => keep !== undefined && onKept()}
        />
      )}
    </>
  );
}
