"use client";
import { useSearchParams } from "next/navigation";
import { useEffect, useMemo, useState } from "react";
import type { Advice } from "../../../lib/knowledge/schema/advice.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { useDeviceUrgency } from "../../engine/use-device-urgency.ts";
import { pagePerson } from "../../store/person-here.ts";
import type { CaseInList } from "../../store/use-cases.ts";
import { NO_NAME, useSettings } from "../../store/use-settings.ts";
import { usePeople } from "../../sync/use-people.ts";
import { useServerCases } from "../../sync/use-server-cases.ts";
import { CaseFilters, isNarrowed } from "./case-filters.tsx";
import { CaseGroups } from "./case-groups.tsx";
import { caseSummary } from "./case-line.tsx";
import { overviewRows } from "./overview-rows.ts";
import { addressOf, queryOf, readWanted, type Wanted } from "./wanted.ts";

/** Cases of this device that are shown at a time. */
const PAGE = 50;
/** From how many cases on searching and narrowing are worth their place. */
const WORTH_NARROWING = 4;
/** Ages in words are set anew so often. */
const MINUTE_MS = 60_000;

const NO_LEVELS: Advice["levels"] = [];
const NO_CASES: readonly CaseInList[] = [];

/** The cases of the workshop and of this device in one list, by what the address asks for. */
export function CaseOverview({
  cases,
  knowledge,
  onRemove,
}: {
  readonly cases: readonly CaseInList[];
  readonly knowledge: Knowledge | undefined;
  readonly onRemove: (id: string) => void;
}) {
  const params = useSearchParams();
  const advice = knowledge?.advice;
  const levels = advice?.levels ?? NO_LEVELS;
  const address = params.toString();
  const read = useMemo(
    () =>
      readWanted(
        new URLSearchParams(address),
        advice?.levels.map(({ id }) => id),
      ),
    [address, advice],
  );
  // The framework says a little later that the address has changed; a tick or a letter stands at once.
  const [ahead, setAhead] = useState<{ readonly of: string; readonly wanted: Wanted }>();
  const wanted = ahead?.of === address ? ahead.wanted : read.wanted;
  const { odd } = read;
  // Said: back at the old address it must not stand again.
  if (ahead !== undefined && ahead.of !== address) setAhead(undefined);
  const [settings] = useSettings();
  const person = pagePerson();
  const me = useMemo(
    () => ({ account: person?.id, name: person?.name ?? settings.by }),
    [person, settings.by],
  );
  const found = useServerCases(queryOf(wanted, me));
  const people = usePeople();
  const [most, setMost] = useState(PAGE);
  const now = useNow();
  const server = found.status === "ready" || (found.status === "looking" && found.heads.length > 0);
  const { heads, more } = found;

  // Only what the server does not tell is worked out here.
  const alone = useMemo(() => {
    const open = cases.filter(({ state }) => state.verdict === undefined);
    return server
      ? open.filter(
          ({ serverVersion, waiting, stuck }) => serverVersion === undefined || waiting > 0 || stuck,
        )
      : open;
  }, [cases, server]);
  const known = useDeviceUrgency(found.status === "looking" ? NO_CASES : alone, advice);

  const rows = useMemo(
    () =>
      overviewRows({
        wanted,
        me,
        levels,
        heads: server ? heads : undefined,
        more: more !== undefined,
        device: cases,
        known,
        searched: ({ state, ...item }) =>
          [state.vehicle, state.plate, state.customer, caseSummary({ state, ...item }, knowledge)].join(" "),
      }),
    [wanted, me, levels, server, heads, more, cases, known, knowledge],
  );

  const go = (change: Partial<Wanted>, typed = false): void => {
    setMost(PAGE);
    const next = { ...wanted, ...change };
    const to = addressOf(next);
    setAhead({ of: address, wanted: next });
    // The framework follows the browser's own history: no page is fetched for it, so that it works without a network.
    if (typed) window.history.replaceState(null, "", to);
    else window.history.pushState(null, "", to);
  };

  const names = useMemo(
    () => [
      ...new Set(
        rows.flatMap(({ assigned }) => (assigned?.account === undefined && assigned ? [assigned.name] : [])),
      ),
    ],
    [rows],
  );
  const shown = rows.slice(0, Math.max(most, server ? heads.length : 0));
  const narrowed = isNarrowed(wanted);
  return (
    <div aria-busy={found.status === "looking"}>
      {(narrowed || rows.length >= WORTH_NARROWING || wanted.sort !== "urgent") && (
        <CaseFilters
          wanted={wanted}
          levels={levels}
          people={people}
          names={names}
          named={me.account !== undefined || me.name !== NO_NAME}
          onWanted={go}
          onText={(text) => go({ text }, true)}
        />
      )}
      {odd.length > 0 && (
        <p className="notice" role="status">
          The address asks for what there is not: {odd.join(", ")}. It is left out of account.
        </p>
      )}
      {found.status === "away" && (
        <p className="notice" role="status">
          The workshop&apos;s server does not answer now. These are the cases that are kept on this device;
          others come when it answers.
        </p>
      )}
      {found.status === "looking" && rows.length === 0 && <p role="status">Looking ...</p>}
      {found.status !== "looking" && rows.length === 0 && (
        <p className={narrowed ? undefined : "notice"} role="status">
          {narrowed
            ? "No case is like that."
            : cases.length > 0
              ? "No case is open."
              : "No case yet. Open a new one, or try an invented one below."}
        </p>
      )}
      <CaseGroups
        rows={shown}
        grouped={wanted.sort === "urgent"}
        levels={levels}
        knowledge={knowledge}
        now={now}
        onRemove={onRemove}
      />
      {(rows.length > shown.length || (server && more !== undefined)) && (
        <button
          type="button"
          className="wide"
          onClick={() => {
            setMost(shown.length + PAGE);
            if (rows.length <= shown.length) more?.();
          }}
        >
          Show more
        </button>
      )}
    </div>
  );
}

function useNow(): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), MINUTE_MS);
    return () => clearInterval(timer);
  }, []);
  return now;
}
