import type { Place, UnsentRow } from "../store/open-database.ts";
import type { Standing } from "./sync-tools.ts";
import type { Trouble } from "./trouble.ts";

/** Where something is kept, said in one line. */
export interface KeptWords {
  readonly text: string;
  /** Somebody has to do something about it. */
  readonly trouble: boolean;
  /** The page where that is done. */
  readonly act?: "sign-in" | "set-up";
}

/** Where the entries of one case are kept. */
export function keptWords(
  standing: Standing,
  unsent: readonly UnsentRow[],
  place: Place | undefined,
): KeptWords {
  if (place?.trouble !== undefined) return { text: caseTroubleWords(place.trouble), trouble: true };
  const refused = unsent.filter((row) => row.refused !== undefined);
  const [first] = refused;
  if (first?.refused !== undefined)
    return {
      text: `${entries(refused.length)} on this device only: the server does not take ${refused.length === 1 ? "it" : "them"}. ${refusedWords(first.refused)}`,
      trouble: true,
    };
  if ((place?.unread ?? 0) > 0)
    return {
      text: "The server has entries that this version of the app cannot read. Load the page again to get the new version.",
      trouble: true,
    };
  const waiting = unsent.filter((row) => row.held === undefined).length;
  return placeWords(standing, waiting, place !== undefined && place.version > 0);
}

/** Where all cases of this device are kept, seen together. */
export function keptWordsOfAll(
  standing: Standing,
  unsent: readonly UnsentRow[],
  places: readonly Place[],
): KeptWords {
  const stuck = new Set([
    ...places.filter((place) => place.trouble !== undefined).map((place) => place.caseId),
    ...unsent.filter((row) => row.refused !== undefined).map((row) => row.caseId),
  ]);
  if (stuck.size > 0)
    return {
      text: `${stuck.size === 1 ? "One case does" : `${stuck.size} cases do`} not go to the server as ${stuck.size === 1 ? "it is" : "they are"}. The reason stands on the case; nothing is lost.`,
      trouble: true,
    };
  if (standing.is === "no-server")
    return {
      text: "Kept on this device only. Save a copy of those that matter: clearing the browser's data removes them.",
      trouble: false,
    };
  const waiting = unsent.filter((row) => row.held === undefined).length;
  return placeWords(standing, waiting, places.length > 0);
}

function placeWords(standing: Standing, waiting: number, onServer: boolean): KeptWords {
  switch (standing.is) {
    case "no-server":
      return { text: "Kept on this device.", trouble: false };
    case "sign-in":
      return {
        text:
          waiting > 0
            ? `${entries(waiting)} on this device only. They go to the workshop's server when you sign in.`
            : "Kept on this device. Sign in to reach the workshop's server.",
        trouble: false,
        act: "sign-in",
      };
    case "owner-needed":
      return {
        text: "Kept on this device. The workshop's server waits for its first account.",
        trouble: false,
        act: "set-up",
      };
    case "away":
      return awayWords(standing.trouble, waiting);
    case "unknown":
    case "answers":
      if (waiting > 0)
        return {
          text: `Kept on this device; ${entriesAre(waiting)} on the way to the workshop's server.`,
          trouble: false,
        };
      return {
        text: onServer ? "Kept on this device and on the workshop's server." : "Kept on this device.",
        trouble: false,
      };
  }
}

function awayWords(trouble: Trouble | undefined, waiting: number): KeptWords {
  const where =
    waiting > 0
      ? `${entries(waiting)} on this device only; ${waiting === 1 ? "it goes" : "they go"} out when the server answers.`
      : "Kept on this device. The workshop's server does not answer now.";
  if (trouble?.detail === undefined) return { text: where, trouble: false };
  return { text: `${where} The server says: ${sentence(trouble.detail)}`, trouble: true };
}

const entries = (count: number): string => (count === 1 ? "1 entry" : `${count} entries`);
const entriesAre = (count: number): string => (count === 1 ? "1 entry is" : `${count} entries are`);

/** A sentence of the server with its full stop. */
function sentence(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

function caseTroubleWords({ code, detail }: Trouble): string {
  switch (code) {
    case "case-removed":
      return "This case was removed on the workshop's server, which takes nothing for it any more. It stays on this device until you remove it here; save a copy if it still matters.";
    case "not-yours":
      return "The workshop's server does not show you this case. What you entered stays on this device; ask the owner of the workshop's accounts who may work on it.";
    case "no-opening":
      return "The workshop's server does not know this case, and its opening is not on this device. It goes out once the device that opened it has sent it.";
    default:
      return `The workshop's server does not take this case${detail === undefined ? "." : `: ${sentence(detail)}`} It stays on this device and is tried again when the page is loaded anew.`;
  }
}

function refusedWords({ code, detail }: Trouble): string {
  switch (code) {
    case "entry-differs":
      return "It holds another entry under the same name, which should never happen. Save a copy of the case.";
    case "case-full":
      return "The case is full. Save a copy and go on in a new case.";
    default:
      return `${detail === undefined ? `It gives ${code} as the reason.` : sentence(detail)} It is tried again when the page is loaded anew.`;
  }
}
