"use client";
import { Fragment, useMemo, useState } from "react";
import type { WearLine } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { shownDistance, type Units } from "../../text/amounts.ts";
import { Choice } from "../choice.tsx";
import { WearDetails } from "./wear-details.tsx";
import { chanceAt, columnPercent, type Horizon, HORIZONS_KM, type WearRow, wearRows } from "./wear-rows.ts";

const SHOWN = 25;

/** Wear parts with their chances now and ahead; a line opens its curve and its basis. */
export function WearTable({
  knowledge,
  lines,
  units,
}: {
  readonly knowledge: Knowledge;
  readonly lines: readonly WearLine[];
  readonly units: Units;
}) {
  const [horizon, setHorizon] = useState<Horizon>(0);
  const [wanted, setWanted] = useState("");
  const [all, setAll] = useState(false);
  const [open, setOpen] = useState<string>();
  const rows = useMemo(() => wearRows(knowledge, lines, horizon), [knowledge, lines, horizon]);
  const words = wanted.trim().toLowerCase();
  const found = rows.filter((r) => `${r.part}: ${r.fault} ${r.places}`.toLowerCase().includes(words));
  const shown = all ? found : found.slice(0, SHOWN);
  const ahead = (km: number) => `+${shownDistance(km, units).toLocaleString("en-GB")} ${units.distance}`;
  return (
    <>
      <div className="fields no-print">
        <Choice
          id="wear-horizon"
          label="Sort by"
          value={String(horizon)}
          options={HORIZONS_KM.map((km) => ({
            value: String(km),
            name: km === 0 ? "failed now" : `failing within ${ahead(km).slice(1)}`,
          }))}
          onChange={(value) => setHorizon(HORIZONS_KM.find((km) => String(km) === value) ?? 0)}
        />
        <div>
          <label htmlFor="wear-wanted">Only parts named</label>
          <input
            id="wear-wanted"
            type="search"
            autoComplete="off"
            value={wanted}
            onChange={(event) => setWanted(event.target.value)}
          />
        </div>
      </div>
      <table className="figures wear">
        <caption className="small soft">
          Chance to have failed now, before anything was found; and of one that works to fail within the
          distance
        </caption>
        <thead>
          <tr>
            <th scope="col">Part and way it fails</th>
            {HORIZONS_KM.map((km) => (
              <th
                key={km}
                scope="col"
                className="figure"
                aria-sort={km === horizon ? "descending" : undefined}
              >
                {km === 0 ? "now" : ahead(km)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shown.map((row) => (
            <Fragment key={row.key}>
              <tr>
                <th scope="row">
                  <RowButton
                    row={row}
                    open={open === row.key}
                    onToggle={() => setOpen(open === row.key ? undefined : row.key)}
                  />
                </th>
                {HORIZONS_KM.map((km) => (
                  <td key={km} className="figure">
                    {columnPercent(chanceAt(row.line, km))}
                  </td>
                ))}
              </tr>
              {open === row.key && (
                <tr>
                  <td colSpan={1 + HORIZONS_KM.length}>
                    <WearDetails knowledge={knowledge} row={row} units={units} />
                  </td>
                </tr>
              )}
            </Fragment>
          ))}
        </tbody>
      </table>
      {found.length === 0 && <p className="notice">No wear part of this car is named so.</p>}
      {found.length > shown.length && (
        <button type="button" className="wide no-print" onClick={() => setAll(true)}>
          Show all {found.length}
        </button>
      )}
    </>
  );
}

function RowButton({
  row,
  open,
  onToggle,
}: {
  readonly row: WearRow;
  readonly open: boolean;
  readonly onToggle: () => void;
}) {
  return (
    <button type="button" className="line-button" aria-expanded={open} onClick={onToggle}>
      <span>
        {row.part}: {row.fault}
      </span>
      <span className="small soft">{row.places}</span>
    </button>
  );
}
