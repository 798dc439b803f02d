import { pagePerson, personHere, rememberPerson } from "../store/person-here.ts";
import type { MeReply } from "./replies.ts";

const ENDED = "cornerwise/session-ended";

/**
 * Brings this browser in line with whom the server takes us for; says whether the page is on its way to a fresh load.
 *
 * Each person's cases are in a database of their own. When the server says that a session has ended, the person's cases
 * are put out of sight with it: it may have been ended from elsewhere because the device was lost. Nothing is removed.
 */
export function settlePerson(me: MeReply): boolean {
  const here = pagePerson();
  const there = me.person;
  if (here?.id === there?.id) {
    if (there !== undefined && (there.name !== here?.name || there.role !== here.role)) rememberPerson(there);
    return false;
  }
  rememberPerson(there);
  // A browser that keeps nothing would be loaded for ever.
  if (personHere()?.id !== there?.id) return false;
  if (there !== undefined || me.local || here === undefined) window.location.reload();
  else {
    noteEnded(here);
    window.location.assign("/sign-in");
  }
  return true;
}

/** Whose session ended without them signing out here. */
export interface Ended {
  readonly id: string;
  readonly name: string;
}

function noteEnded({ id, name }: Ended): void {
  try {
    sessionStorage.setItem(ENDED, JSON.stringify({ id, name }));
  } catch {
    // The sign-in page then says less.
  }
}

/** Whose session ended in this tab; undefined when none did. */
export function endedSession(): Ended | undefined {
  try {
    const text = sessionStorage.getItem(ENDED);
    return text === null ? undefined : (JSON.parse(text) as Ended);
  } catch {
    return undefined;
  }
}

export function forgetEnded(): void {
  try {
    sessionStorage.removeItem(ENDED);
  } catch {
    // Nothing was kept.
  }
}
