import { type Entry, type EntryOf, isByForm, isKnownEntry, type KnownEntry } from "./entries.ts";

/** A piece of a timeline line: plain words, or an id that the screen turns into its trade name. */
export type LabelPart =
  | { readonly is: "words"; readonly text: string }
  | { readonly is: "quote"; readonly text: string }
  | {
      readonly is: "finding" | "check" | "suspect" | "set-up" | "part" | "place" | "repair";
      readonly id: string;
    };

const words = (text: string): LabelPart => ({ is: "words", text });
const quote = (text: string): LabelPart => ({ is: "quote", text });

/** Who says it, of what the customer gave by the form of a link. */
export const BY_FORM = "the customer, by the form";

const STATE_WORDS = { present: "yes", absent: "no", unknown: "not known" } as const;

function answeredLabel(entry: EntryOf<"answered">): LabelPart[] {
  const parts: LabelPart[] = [{ is: "finding", id: entry.finding }, words(STATE_WORDS[entry.state])];
  if (entry.level !== undefined) parts.push(words(entry.level.replaceAll("-", " ")));
  if (entry.value !== undefined) parts.push(words(`measured ${entry.value}`));
  if (entry.words !== undefined) parts.push(quote(entry.words));
  if (entry.asked !== undefined) parts.push(quote(`${entry.asked.text} ${entry.asked.choice}`));
  parts.push(words(entry.how === "check" ? "checked" : "told"));
  return parts;
}

function fittedLabel({ part, place, atKm, yearsAgo }: EntryOf<"fitted">): LabelPart[] {
  return [
    words(atKm === 0 ? "Known to be the first" : "Fitted"),
    { is: "part", id: part },
    ...(place === undefined ? [] : [{ is: "place", id: place } as const]),
    ...(atKm === undefined || atKm === 0 ? [] : [words(`at ${Math.round(atKm)} km`)]),
    ...(yearsAgo === undefined ? [] : [words(`${yearsAgo} years ago`)]),
  ];
}

function turningLabel({ tyre, circumferenceMm, finalDrive, measured }: EntryOf<"turning">): LabelPart[] {
  return [
    words("Turning parts"),
    ...(tyre === undefined ? [] : [words(`tyre ${tyre}`)]),
    ...(circumferenceMm === undefined ? [] : [words(`circumference ${circumferenceMm} mm`)]),
    ...(finalDrive === undefined ? [] : [words(`final drive ${finalDrive}`)]),
    ...measured.map(({ hz, speedKmh, amplitude }) =>
      words(
        `${hz} Hz at ${Math.round(speedKmh)} km/h${amplitude === undefined ? "" : ` (${amplitude} m/s²)`}`,
      ),
    ),
  ];
}

function advisedLabel({ said, p50, p90, parts, note }: EntryOf<"advised">): LabelPart[] {
  return [
    words("Advised"),
    quote(said),
    ...(p50 === undefined ? [] : [words(`half of the visits within ${Math.round(p50)} min`)]),
    ...(p90 === undefined ? [] : [words(`nine of ten within ${Math.round(p90)} min`)]),
    ...(parts.length === 0 ? [] : [words("parts to have ready")]),
    ...parts.map((id): LabelPart => ({ is: "repair", id })),
    ...(note === undefined ? [] : [quote(note)]),
  ];
}

type Labels = { readonly [K in KnownEntry["kind"]]: (entry: EntryOf<K>) => LabelPart[] };

const LABELS: Labels = {
  opened: (entry) => [words("Case opened"), quote(entry.vehicle)],
  "release-changed": (entry) => [words(`Weighed with release ${entry.knowledgeVersion ?? entry.release}`)],
  "car-changed": () => [words("Car changed")],
  told: (entry) => [words("Told"), quote(entry.text)],
  answered: answeredLabel,
  photo: ({ caption }) => [words("Photo"), ...(caption === undefined ? [] : [quote(caption)])],
  refused: (entry) => [words("Not meant"), { is: "finding", id: entry.finding }, quote(entry.words)],
  "set-up": (entry) => [words("Car now"), { is: "set-up", id: entry.setUp }],
  "not-possible": (entry) => [words("Not possible"), { is: "check", id: entry.check }, quote(entry.reason)],
  "cautions-read": (entry) => [words("Cautions read"), { is: "check", id: entry.check }],
  fitted: fittedLabel,
  turning: turningLabel,
  note: (entry) => [words("Note"), quote(entry.text)],
  verdict: (entry) => [words("Verdict"), ...entry.suspects.map((id): LabelPart => ({ is: "suspect", id }))],
  advised: advisedLabel,
  assigned: ({ to }) => (to === undefined ? [words("Nobody has it now")] : [words(`${to} has it now`)]),
  reopened: () => [words("Case reopened")],
  retracted: () => [words("Taken back")],
};

/** What a timeline line says of an entry, in parts. */
export function entryLabel(entry: Entry): readonly LabelPart[] {
  if (!isKnownEntry(entry)) return [words(`Entry of a newer version (${entry.kind})`)];
  const label = LABELS[entry.kind] as (entry: KnownEntry) => LabelPart[];
  return isByForm(entry) ? [...label(entry), words(BY_FORM)] : label(entry);
}
