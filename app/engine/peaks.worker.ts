/// <reference lib="webworker" />
import type { Recording } from "../../lib/car/recording.ts";
import { sharpestPeaks, type VibrationSpectrum } from "../../lib/car/vibration-peaks.ts";
import { messageOf } from "../text/message-of.ts";

declare const self: DedicatedWorkerGlobalScope;

/** One recording, on its own clock and on others that it may be sharper on. */
export interface PeaksAsked {
  readonly clocks: readonly [Recording, ...Recording[]];
  /** Share by which two peaks must be apart to be two. */
  readonly apart: number;
}

/** What comes back; each question has a worker of its own, which is stopped when another one is asked. */
export type PeaksReply =
  | {
      readonly spectrum: VibrationSpectrum;
      /** Which of the clocks was sharper. */
      readonly taken: number;
    }
  | { readonly failed: string };

self.onmessage = ({ data }: MessageEvent<PeaksAsked>) => {
  let reply: PeaksReply;
  try {
    reply = sharpestPeaks(data.clocks, data.apart);
  } catch (error) {
    reply = { failed: messageOf(error) };
  }
  self.postMessage(reply);
};
