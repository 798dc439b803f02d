import { capital } from "../engine/names.ts";

/** What a message to a customer is made of; everything in words of their own language, nothing in ids. */
export interface MessageParts {
  readonly customer?: string;
  readonly vehicle?: string;
  readonly plate?: string;
  /** What they told, in their own words. */
  readonly told: readonly string[];
  /** Name of the advice, for the subject. */
  readonly advice: string;
  /** What to do about driving. */
  readonly say: string;
  /** Whether the car is fetched, stays where it is for now, or is brought in. */
  readonly comes: "fetched" | "waits" | "brought";
  /** Signs at which to stop at once. */
  readonly stopIf: readonly string[];
  /** Minutes within which half and nine of ten of such visits end. */
  readonly visit?: { readonly p50: number; readonly p90: number };
  /** Who signs it. */
  readonly signed?: string;
  /** Nobody's real car. */
  readonly invented?: boolean;
}

export interface Message {
  /** One line. */
  readonly subject: string;
  /** Lines that end in a line feed. */
  readonly body: string;
}

/** Longest quotation of what they told; a mail that is handed over by its address must stay short. */
const LONGEST_QUOTE = 300;

const STOP_HEAD: Readonly<Record<MessageParts["comes"], string>> = {
  fetched:
    "If you are out with it now, stop where you are clear of the traffic and have it fetched from there. Do so at once if:",
  waits: "If you are out with it now, stop at once, clear of the traffic, and have it fetched if:",
  brought: "On the way, stop at once, clear of the traffic, and have it fetched if:",
};

const BRING = [
  "the car's papers, and bills for work that was done on it lately",
  "the key for the wheel nuts, if they need one of their own",
  "the telephone number of whoever has heard or felt it most",
] as const;

/**
 * A message that tells a customer what to do with the car, at which signs to stop, how long it takes and what to bring.
 *
 * Names no part and no cause: nobody has seen the car, and what stands in writing is taken as settled. Never says that the
 * car is fit to drive.
 */
export function customerMessage(parts: MessageParts): Message {
  const { customer = "", stopIf, visit, signed = "", invented = false } = parts;
  const paragraphs = [
    customer.trim() === "" ? "Hello," : `Hello ${customer.trim()},`,
    thanks(parts),
    `${parts.say} We have not seen the car yet, so nobody can say what is wrong with it, or that nothing is.`,
    ...(stopIf.length === 0 ? [] : [listed(STOP_HEAD[parts.comes], stopIf)]),
    ...(visit === undefined ? [] : [howLong(visit, parts.comes)]),
    listed(
      parts.comes === "fetched" ? "Please send with the car, or tell us:" : "When it comes, please bring:",
      BRING,
    ),
    "Call us before then if anything changes, or if something here is not clear.",
    ...(signed.trim() === "" ? [] : [signed.trim()]),
    ...(invented ? ["(Invented case: no real car, customer or workshop.)"] : []),
  ];
  return { subject: `${capital(carWords(parts))}: ${parts.advice}`, body: `${paragraphs.join("\n\n")}\n` };
}

/** Minutes as a customer plans them, rounded up to a quarter of an hour: "1 hour 30 minutes". */
export function plannedTime(minutes: number): string {
  const quarters = Math.max(1, Math.ceil(minutes / 15));
  const hours = Math.floor(quarters / 4);
  const rest = (quarters % 4) * 15;
  const words = [
    ...(hours === 0 ? [] : [`${hours} ${hours === 1 ? "hour" : "hours"}`]),
    ...(rest === 0 ? [] : [`${rest} minutes`]),
  ];
  return words.join(" ");
}

function thanks(parts: MessageParts): string {
  const told = oneLine(parts.told.join(" "));
  const first = `Thank you for telling us about ${carWords(parts)}.`;
  return told === "" ? first : `${first} You said: "${shortened(told)}"`;
}

function carWords({ vehicle = "", plate = "" }: MessageParts): string {
  const car = oneLine(vehicle) === "" ? "your car" : `your ${oneLine(vehicle)}`;
  return oneLine(plate) === "" ? car : `${car}, ${oneLine(plate)}`;
}

function howLong({ p50, p90 }: NonNullable<MessageParts["visit"]>, comes: MessageParts["comes"]): string {
  const likely = plannedTime(p50);
  const longest = plannedTime(p90);
  const start = comes === "brought" ? "Please plan" : "Once it is with us, please plan";
  const more = longest === likely ? "" : ` It may take up to ${longest}.`;
  return `${start} about ${likely} for finding it and putting it right.${more} If a part has to be ordered, it takes longer; we call you first.`;
}

function listed(head: string, lines: readonly string[]): string {
  return [head, ...lines.map((line) => `- ${line}`)].join("\n");
}

/** Cut between words. */
function shortened(text: string): string {
  if (text.length <= LONGEST_QUOTE) return text;
  const cut = text.slice(0, LONGEST_QUOTE);
  return `${cut.slice(0, Math.max(cut.lastIndexOf(" "), LONGEST_QUOTE / 2))} ...`;
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, " ").trim();
}
