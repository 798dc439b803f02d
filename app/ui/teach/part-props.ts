import type { CaseCar } from "../../../lib/case/entries.ts";
import type { OpenRelease } from "../../knowledge/open-release.ts";
import type { Setting } from "./setting.ts";

/** What every part of the sheet that sets an exercise is given. */
export interface PartProps {
  readonly release: OpenRelease;
  readonly setting: Setting;
  /** The car as it was read from the fields. */
  readonly car: CaseCar;
  readonly problems: Readonly<Record<string, string>>;
  readonly onSetting: (change: Partial<Setting>) => void;
}
