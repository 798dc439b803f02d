"use client";
import { useCallback, useEffect, useRef, useState } from "react";
import { readRecording, SHORTEST_RECORDING } from "../../../lib/car/recording.ts";
import type { Sample } from "../../../lib/car/recording-csv.ts";
import { allowMotion, whyNoMotion } from "../../sensor/motion-sensor.ts";
import { type Progress, record } from "../../sensor/recorder.ts";
import { messageOf } from "../../text/message-of.ts";

/** While it records, what is there is kept this often, so that a call or a flat battery costs little. Units: seconds. */
const KEEP_EVERY = 2;

export interface Recorder {
  /** Undefined while nothing is recorded. */
  readonly progress: Progress | undefined;
  readonly asking: boolean;
  /** Why there is no recording, in words. */
  readonly trouble: string | undefined;
  readonly start: (seconds: number, withSpeed: boolean) => void;
  readonly stop: () => void;
}

/** Records by the phone's sensor; `onKeep` gets whatever is long enough to be looked through, while it grows and at its end. */
export function useRecorder(onKeep: (samples: readonly Sample[]) => void): Recorder {
  const [progress, setProgress] = useState<Progress>();
  const [asking, setAsking] = useState(false);
  const [trouble, setTrouble] = useState<string>();
  const ending = useRef<() => void>(undefined);
  const keep = useRef(onKeep);
  useEffect(() => {
    keep.current = onKeep;
  }, [onKeep]);
  const here = useRef(true);
  // Leaving the screen ends the recording; what there is of it is kept.
  useEffect(() => {
    here.current = true;
    return () => {
      here.current = false;
      ending.current?.();
    };
  }, []);

  const begin = useCallback((seconds: number, withSpeed: boolean) => {
    let keptAt = SHORTEST_RECORDING - KEEP_EVERY;
    ending.current = record({
      seconds,
      withSpeed,
      onProgress: (now, samples) => {
        setProgress(now);
        if (now.seconds < keptAt + KEEP_EVERY || now.seconds < SHORTEST_RECORDING) return;
        keptAt = now.seconds;
        keep.current(samples);
      },
      onEnd: (samples, silent) => {
        ending.current = undefined;
        setProgress(undefined);
        if (silent !== undefined) {
          setTrouble(silent);
          return;
        }
        try {
          readRecording(samples);
          keep.current(samples);
        } catch (error) {
          setTrouble(`${messageOf(error)} Record once more; a recording from before is still kept.`);
        }
      },
    });
  }, []);

  const start = useCallback(
    (seconds: number, withSpeed: boolean) => {
      const why = whyNoMotion();
      setTrouble(why);
      if (why !== undefined || ending.current !== undefined) return;
      setAsking(true);
      allowMotion()
        .then(
          () => here.current && begin(seconds, withSpeed),
          (error: unknown) => setTrouble(messageOf(error)),
        )
        .finally(() => setAsking(false));
    },
    [begin],
  );
  const stop = useCallback(() => ending.current?.(), []);
  return { progress, asking, trouble, start, stop };
}
