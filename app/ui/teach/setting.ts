import type { CaseCar } from "../../../lib/case/entries.ts";
import type { CarAttribute } from "../../../lib/knowledge/schema/compiled.ts";
import { Exercise, EXERCISE_FORM, EXERCISE_FORMAT } from "../../../lib/training/index.ts";
import { typedNumber, type Units } from "../../text/amounts.ts";
import { type CarFields, carOfFields, fieldsOfCar } from "../case/car-fields.ts";

/** An exercise while it is being set: figures as typed, anything may still be missing. */
export interface Setting {
  readonly id: string;
  readonly name: string;
  readonly about: string;
  readonly release: string;
  readonly car: CarFields;
  readonly vehicle: string;
  readonly customer: string;
  readonly lately: readonly string[];
  readonly text: string;
  readonly said: Exercise["said"];
  readonly faults: Exercise["hidden"]["faults"];
  readonly seed: number;
  readonly results: Exercise["hidden"]["results"];
  readonly lift: boolean;
  readonly helper: boolean;
  readonly hints: boolean;
  readonly ranking: boolean;
  readonly missingTools: readonly string[];
  /** As typed; empty: no limit, and the knowledge's own share. */
  readonly mostMinutes: string;
  readonly unreliable: string;
}

/** A new one with nothing in it; `seed` fixes its results. */
export function emptySetting(id: string, release: string, seed: number): Setting {
  return {
    id,
    name: "",
    about: "",
    release,
    car: {},
    vehicle: "demo car (invented)",
    customer: "invented",
    lately: [],
    text: "",
    said: [],
    faults: [],
    seed,
    results: [],
    lift: true,
    helper: true,
    hints: true,
    ranking: true,
    missingTools: [],
    mostMinutes: "",
    unreliable: "",
  };
}

/** An exercise as it is set anew. */
export function settingOf(exercise: Exercise, attributes: readonly CarAttribute[], units: Units): Setting {
  const { id, name, about, release, vehicle, customer, lately, text, said, terms, hidden } = exercise;
  const { mostMinutes, unreliable, ...rest } = terms;
  return {
    ...{ id, name, about, release, vehicle, customer, lately, text, said, ...rest },
    car: fieldsOfCar(attributes, exercise.car, units),
    faults: hidden.faults,
    seed: hidden.seed,
    results: hidden.results,
    mostMinutes: mostMinutes === undefined ? "" : String(mostMinutes),
    unreliable: unreliable === undefined ? "" : String(Math.round(100 * unreliable)),
  };
}

/** A draft from its text; undefined when there is none, or it cannot be read. */
export function settingOfDraft(draft: string, empty: Setting): Setting | undefined {
  if (draft === "") return undefined;
  try {
    return { ...empty, ...(JSON.parse(draft) as Partial<Setting>) };
  } catch {
    return undefined;
  }
}

/** What was set, read. */
export interface ReadSetting {
  readonly car: CaseCar;
  /** Field -> what is wrong with it. */
  readonly problems: Readonly<Record<string, string>>;
  /** Undefined while something is missing or wrong. */
  readonly exercise: Exercise | undefined;
}

/** Reads what was set; what is missing is said in words. */
export function readSetting(
  setting: Setting,
  attributes: readonly CarAttribute[],
  units: Units,
): ReadSetting {
  const { car, problems: ofCar } = carOfFields(attributes, setting.car, units);
  const problems: Record<string, string> = { ...ofCar };
  const mostMinutes = figure(setting.mostMinutes, 1, 1000);
  const percent = figure(setting.unreliable, 0, 100);
  if (mostMinutes === "wrong") problems["mostMinutes"] = "Give minutes from 1 to 1000, or leave it empty.";
  if (percent === "wrong") problems["unreliable"] = "Give a share from 0 to 100 %, or leave it empty.";
  if (setting.name.trim() === "") problems["name"] = "Give it a name that gives nothing away.";
  if (!setting.faults.some((f) => f.causes)) problems["faults"] = "Hide at least one fault as the cause.";
  if (setting.said.length === 0) problems["said"] = "Let the customer say at least one complaint.";
  if (setting.text.length > 4000) problems["text"] = `That is ${setting.text.length} characters; 4000 fit.`;
  if (Object.keys(problems).length > 0) return { car, problems, exercise: undefined };
  const { id, release, lately, said, lift, helper, hints, ranking, missingTools } = setting;
  const read = Exercise.safeParse({
    format: EXERCISE_FORMAT,
    form: EXERCISE_FORM,
    ...{ id, release, lately, said, car },
    name: setting.name.trim(),
    about: setting.about.trim(),
    vehicle: setting.vehicle.trim(),
    customer: setting.customer.trim(),
    text: setting.text.trim(),
    terms: {
      ...{ lift, helper, hints, ranking, missingTools },
      ...(typeof mostMinutes === "number" && { mostMinutes }),
      ...(typeof percent === "number" && { unreliable: percent / 100 }),
    },
    hidden: { faults: setting.faults, seed: setting.seed, results: setting.results },
  });
  if (read.success) return { car, problems, exercise: read.data };
  for (const { path, message } of read.error.issues) problems[path.join(".")] = message;
  return { car, problems, exercise: undefined };
}

function figure(text: string, least: number, most: number): number | "wrong" | undefined {
  if (text.trim() === "") return undefined;
  const number = typedNumber(text);
  return number === undefined || number < least || number > most ? "wrong" : number;
}
