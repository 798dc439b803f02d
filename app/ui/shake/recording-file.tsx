"use client";
import { useState } from "react";
import { readRecording } from "../../../lib/car/recording.ts";
import {
  type CsvUnits,
  LONGEST_CSV,
  readRecordingCsv,
  writeRecordingCsv,
} from "../../../lib/car/recording-csv.ts";
import { messageOf } from "../../text/message-of.ts";
import { Choice } from "../choice.tsx";
import { FileButton } from "../file-button.tsx";
import { Fold } from "../fold.tsx";

const TIMES = [
  { value: "named", name: "as the heading says" },
  { value: "s", name: "seconds" },
  { value: "ms", name: "milliseconds" },
] as const;
const ACCELERATIONS = [
  { value: "named", name: "as the heading says" },
  { value: "m/s2", name: "m/s²" },
  { value: "g", name: "g" },
] as const;

async function readFile(file: File, units: CsvUnits): Promise<string> {
  // A character takes one byte at least, so a longer file cannot be a shorter text than a third of it.
  if (file.size > 3 * LONGEST_CSV)
    throw new Error(`The file has ${Math.round(file.size / 1e6)} MB; cut it to the minute that matters.`);
  const samples = readRecordingCsv(await file.text(), units);
  readRecording(samples);
  return writeRecordingCsv(samples);
}

/** Takes in a recording from a CSV file, of this app or of any other sensor. */
export function RecordingFile({ onTaken }: { readonly onTaken: (csv: string) => void }) {
  const [time, setTime] = useState<(typeof TIMES)[number]["value"]>("named");
  const [acceleration, setAcceleration] = useState<(typeof ACCELERATIONS)[number]["value"]>("named");
  const [news, setNews] = useState<{ readonly bad: boolean; readonly text: string }>();
  return (
    <Fold title="A recording from a file">
      <p className="small">
        CSV with a heading: time, x, y, z and, if it was noted, speed. Units stand behind the names, such as
        &quot;time (ms)&quot; and &quot;x (g)&quot;, or are chosen here.
      </p>
      <div className="fields">
        <Choice id="csv-time" label="Time in" value={time} options={TIMES} onChange={setTime} />
        <Choice
          id="csv-acceleration"
          label="Acceleration in"
          value={acceleration}
          options={ACCELERATIONS}
          onChange={setAcceleration}
        />
      </div>
      <FileButton
        label="Choose the file"
        accept="text/csv,.csv,.txt,.tsv"
        onFile={(file) =>
          void readFile(file, {
            ...(time !== "named" && { time }),
            ...(acceleration !== "named" && { acceleration }),
          }).then(
            (csv) => {
              setNews({ bad: false, text: `${file.name} is taken in.` });
              onTaken(csv);
            },
            (error: unknown) => setNews({ bad: true, text: `${file.name}: ${messageOf(error)}` }),
          )
        }
      />
      <p role="status" className={news?.bad === true ? "trouble" : undefined}>
        {news?.text}
      </p>
    </Fold>
  );
}
