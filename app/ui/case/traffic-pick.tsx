"use client";
import type { SideWords } from "../../../lib/words/index.ts";
import type { Settings } from "../../store/use-settings.ts";
import { Choice, type ChoiceOption } from "../choice.tsx";

const SIDES: readonly ChoiceOption<Settings["traffic"]>[] = [
  { value: "", name: "not said" },
  { value: "left", name: "on the left" },
  { value: "right", name: "on the right" },
];

/** Asks on which side traffic drives, where the words told are left or right by that. */
export function TrafficPick({
  sides,
  traffic,
  onSettings,
}: {
  readonly sides: readonly SideWords[];
  readonly traffic: Settings["traffic"];
  readonly onSettings: (change: Partial<Settings>) => void;
}) {
  const words = [...new Set(sides.map((side) => side.words))];
  return (
    <div className="notice">
      <p>
        {words.map((word, i) => (
          <span key={word}>
            {i > 0 && ", "}
            <mark>{word}</mark>
          </span>
        ))}
        {traffic === ""
          ? ": left or right? It goes by the side that traffic drives on."
          : `: read for traffic on the ${traffic}.`}
      </p>
      <Choice
        id="traffic"
        label="Traffic here drives"
        value={traffic}
        options={SIDES}
        onChange={(value) => onSettings({ traffic: value })}
      />
    </div>
  );
}
