"use client";
import { useEffect, useState } from "react";
import { z } from "zod";
import { type Urgency, WEIGHED_KINDS } from "../../lib/case/case-urgency.ts";
import type { Advice } from "../../lib/knowledge/schema/advice.ts";
import { locateRelease } from "../knowledge/release-text.ts";
import { readSetting, urgencyKey, writeSetting } from "../store/case-database.ts";
import type { CaseInList } from "../store/use-cases.ts";
import { messageOf } from "../text/message-of.ts";
import { askEngine } from "./engine-client.ts";

/** How urgent a case is, as far as it is known. */
export interface KnownUrgency {
  /** Undefined: not known. */
  readonly urgency: Urgency | undefined;
  /** It is being worked out (again). */
  readonly busy: boolean;
  /** Why it could not be worked out. */
  readonly problem: string | undefined;
}

const Noted = z.object({
  of: z.string(),
  urgency: z.union([
    z.object({ is: z.literal("level"), level: z.string(), danger: z.number() }),
    z.object({ is: z.literal("nothing-told") }),
  ]),
});
type Noted = z.infer<typeof Noted>;

/** What is shown changes this often at most: a list that moves under the finger is no use. */
const SHOW_MS = 1000;

const noted = new Map<string, Noted>();

/** Names what a case was weighed with: its release, and the entries that can change its urgency. */
function nameOf({ state }: CaseInList): string {
  const weighed = state.timeline.filter(({ entry }) => WEIGHED_KINDS.includes(entry.kind));
  return `${state.release} ${weighed.length} ${weighed.at(-1)?.entry.id ?? ""}`;
}

/** Works out the urgency of these cases one after the other, in the engine's worker; what was worked out before is kept. */
export function useDeviceUrgency(
  cases: readonly CaseInList[],
  advice: Advice | undefined,
): ReadonlyMap<string, KnownUrgency> {
  const [known, setKnown] = useState<ReadonlyMap<string, KnownUrgency>>(new Map());
  useEffect(() => {
    if (advice === undefined || cases.length === 0) return undefined;
    let gone = false;
    const found = new Map<string, KnownUrgency>();
    let shownAt = performance.now();
    const show = (): void => {
      shownAt = performance.now();
      if (!gone) setKnown((old) => new Map([...old, ...found]));
    };
    void (async () => {
      for (const item of cases) {
        if (gone) return;
        found.set(item.id, await urgencyOf(item, advice));
        if (performance.now() - shownAt > SHOW_MS) show();
      }
      show();
    })();
    return () => {
      gone = true;
    };
  }, [cases, advice]);
  return known;
}

async function urgencyOf(item: CaseInList, advice: Advice): Promise<KnownUrgency> {
  const of = nameOf(item);
  try {
    const before = noted.get(item.id) ?? (await readNoted(item.id));
    if (before?.of === of) {
      noted.set(item.id, before);
      return { urgency: before.urgency, busy: false, problem: undefined };
    }
    const { car, answers, fitted, release, knowledgeVersion } = item.state;
    const name = await locateRelease({ release, knowledgeVersion });
    if (name === undefined) throw new Error(`knowledge ${knowledgeVersion ?? release} is not here`);
    const urgency = await askEngine(name, "urgency", { state: { car, answers, fitted }, advice });
    noted.set(item.id, { of, urgency });
    writeSetting(urgencyKey(item.id), JSON.stringify({ of, urgency })).catch(() => undefined);
    return { urgency, busy: false, problem: undefined };
  } catch (error) {
    return { urgency: undefined, busy: false, problem: messageOf(error) };
  }
}

async function readNoted(id: string): Promise<Noted | undefined> {
  const text = await readSetting(urgencyKey(id)).catch(() => undefined);
  if (text === undefined) return undefined;
  const read = Noted.safeParse(JSON.parse(text));
  return read.success ? read.data : undefined;
}
