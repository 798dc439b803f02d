import type { PartReady } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { chanceWords, percent } from "../../text/chance-words.ts";
import { capital, nameOfRepair } from "../../text/names.ts";
import { partId } from "./use-parts-picked.ts";

/** Parts listed; the rest is unlikely. */
const MOST = 5;

/** Parts that the repair may take, with the chance from which it pays to have them there. */
export function PartsView({
  knowledge,
  parts,
  picked,
  onPicked,
}: {
  readonly knowledge: Knowledge;
  readonly parts: readonly PartReady[];
  readonly picked: readonly string[];
  readonly onPicked: (ids: readonly string[]) => void;
}) {
  if (parts.length === 0) return <p>No part is likely enough to be named.</p>;
  const shown = parts.filter((part, index) => index < MOST || part.order || picked.includes(partId(part)));
  const pays = parts.some((part) => part.order);
  return (
    <fieldset className="parts-ready">
      <legend className="hidden">Parts to order now</legend>
      <p className="small soft">
        {pays
          ? "Ticked: likely enough that having it there costs less than waiting for it."
          : "None is likely enough yet that ordering it now costs less than waiting for it."}{" "}
        {knowledge.advice?.ready.why}
      </p>
      {shown.map((part) => {
        const id = partId(part);
        return (
          <label key={id} className="tick">
            <input
              type="checkbox"
              checked={picked.includes(id)}
              onChange={(event) =>
                onPicked(event.target.checked ? [...picked, id] : picked.filter((other) => other !== id))
              }
            />
            <span>
              {capital(nameOfRepair(knowledge, id))}: <strong>{chanceWords(part.chance)}</strong>{" "}
              <span className="soft number">
                ({percent(part.chance)}; pays from {percent(part.breakEven)})
              </span>
              {part.pairedWith.length > 0 && (
                <span className="detail small soft">
                  renewed together with{" "}
                  {part.pairedWith
                    .slice(0, 2)
                    .map((other) => nameOfRepair(knowledge, other))
                    .join("; ")}
                </span>
              )}
            </span>
          </label>
        );
      })}
    </fieldset>
  );
}
