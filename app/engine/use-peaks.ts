"use client";
import { useEffect, useState } from "react";
import type { Recording } from "../../lib/car/recording.ts";
import type { VibrationSpectrum } from "../../lib/car/vibration-peaks.ts";
import type { PeaksReply } from "./peaks.worker.ts";

interface Looked {
  readonly recording: Recording;
  readonly reply: PeaksReply;
}

/** The vibrations of a recording, looked for beside the page: a minute of many readings takes seconds. */
export function usePeaks(recording: Recording | undefined): {
  readonly spectrum: VibrationSpectrum | undefined;
  readonly busy: boolean;
  readonly failed: string | undefined;
} {
  const [looked, setLooked] = useState<Looked>();
  useEffect(() => {
    if (recording === undefined) return undefined;
    const worker = new Worker(new URL("./peaks.worker.ts", import.meta.url), { type: "module" });
    worker.onmessage = ({ data }: MessageEvent<PeaksReply>) => {
      setLooked({ recording, reply: data });
      worker.terminate();
    };
    worker.onerror = (event) =>
      setLooked({ recording, reply: { failed: event.message || "The vibrations could not be worked out." } });
    worker.postMessage(recording);
    return () => worker.terminate();
  }, [recording]);
  const reply = looked !== undefined && looked.recording === recording ? looked.reply : undefined;
  return {
    spectrum: reply !== undefined && "spectrum" in reply ? reply.spectrum : undefined,
    busy: recording !== undefined && reply === undefined,
    failed: reply !== undefined && "failed" in reply ? reply.failed : undefined,
  };
}
