"use client";
import { useCallback, useEffect, useMemo, useState } from "react";
import type { Traffic } from "../../lib/words/index.ts";
import type { Units } from "../text/amounts.ts";
import { readSetting, writeSetting } from "./case-database.ts";
import { pagePerson } from "./person-here.ts";

export type Asker = "owner" | "driver" | "technician" | "technician-lift";

/** Choices of this device. */
export interface Settings extends Units {
  readonly asker: Asker;
  readonly helper: boolean;
  /** The customer, or somebody who has heard it, can be asked now. */
  readonly canAsk: boolean;
  /** Name that entries are signed with. */
  readonly by: string;
  /** Tools that are not at hand, by name. */
  readonly missingTools: readonly string[];
  /** The workshop's own costs as typed, by field; what is left out is the knowledge's default. */
  readonly costs: Readonly<Record<string, string>>;
  /** Show what it costs in money rather than in minutes. */
  readonly inMoney: boolean;
  /** Side of the road that traffic keeps to; empty while nobody has said. */
  readonly traffic: Traffic | "";
}

/** Name of whoever has not said theirs. */
export const NO_NAME = "this device";

const DEFAULTS: Settings = {
  distance: "km",
  length: "mm",
  asker: "technician-lift",
  helper: true,
  canAsk: false,
  by: NO_NAME,
  missingTools: [],
  costs: {},
  inMoney: false,
  traffic: "",
};

const KEY = "settings";

/** The device's choices and a way to change them; kept in this browser. */
export function useSettings(): readonly [Settings, (change: Partial<Settings>) => void, boolean] {
  const [settings, setSettings] = useState(DEFAULTS);
  const [loaded, setLoaded] = useState(false);
  useEffect(() => {
    let gone = false;
    readSetting(KEY)
      .then((text) => {
        if (!gone && text !== undefined)
          setSettings({ ...DEFAULTS, ...(JSON.parse(text) as Partial<Settings>) });
      })
      .catch(() => undefined) // without storage the defaults hold
      .finally(() => !gone && setLoaded(true));
    return () => {
      gone = true;
    };
  }, []);
  const change = useCallback((part: Partial<Settings>) => {
    setSettings((old) => {
      const next = { ...old, ...part };
      writeSetting(KEY, JSON.stringify(next)).catch(() => undefined);
      return next;
    });
  }, []);
  // Who is signed in signs with the account's name; nobody else's can be put under their entries by a slip.
  const name = pagePerson()?.name.trim().slice(0, 80) ?? "";
  const signed = useMemo(() => (name === "" ? settings : { ...settings, by: name }), [settings, name]);
  return [signed, change, loaded];
}
