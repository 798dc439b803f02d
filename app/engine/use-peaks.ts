"use client";
import { useEffect, useState } from "react";
import type { VibrationSpectrum } from "../../lib/car/vibration-peaks.ts";
import type { PeaksAsked, PeaksReply } from "./peaks.worker.ts";

interface Looked {
  readonly asked: PeaksAsked;
  readonly reply: PeaksReply;
}

/**
 * The vibrations of a recording, looked for beside the page: a minute of many readings takes seconds.
 *
 * Another object is another question.
 */
export function usePeaks(asked: PeaksAsked): {
  /** Which of the clocks was sharper. */
  readonly clock: number | undefined;
  readonly spectrum: VibrationSpectrum | undefined;
  readonly busy: boolean;
  readonly failed: string | undefined;
} {
  const [looked, setLooked] = useState<Looked>();
  useEffect(() => {
    const worker = new Worker(new URL("./peaks.worker.ts", import.meta.url), { type: "module" });
    worker.onmessage = ({ data }: MessageEvent<PeaksReply>) => {
      setLooked({ asked, reply: data });
      worker.terminate();
    };
    worker.onerror = (event) =>
      setLooked({ asked, reply: { failed: event.message || "The vibrations could not be worked out." } });
    worker.postMessage(asked satisfies PeaksAsked);
    return () => worker.terminate();
  }, [asked]);
  const reply = looked !== undefined && looked.asked === asked ? looked.reply : undefined;
  return {
    clock: reply !== undefined && "taken" in reply ? reply.taken : undefined,
    spectrum: reply !== undefined && "spectrum" in reply ? reply.spectrum : undefined,
    busy: reply === undefined,
    failed: reply !== undefined && "failed" in reply ? reply.failed : undefined,
  };
}
