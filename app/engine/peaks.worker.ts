/// <reference lib="webworker" />
import type { Recording } from "../../lib/car/recording.ts";
import { type VibrationSpectrum, vibrationPeaks } from "../../lib/car/vibration-peaks.ts";
import { messageOf } from "../text/message-of.ts";

declare const self: DedicatedWorkerGlobalScope;

/** What comes back for one recording; each has a worker of its own, which is stopped when another one is asked for. */
export type PeaksReply = { readonly spectrum: VibrationSpectrum } | { readonly failed: string };

self.onmessage = ({ data }: MessageEvent<Recording>) => {
  let reply: PeaksReply;
  try {
    reply = { spectrum: vibrationPeaks(data) };
  } catch (error) {
    reply = { failed: messageOf(error) };
  }
  self.postMessage(reply);
};
