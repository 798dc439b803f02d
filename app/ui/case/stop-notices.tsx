import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Ranked } from "../../engine/protocol.ts";
import { chanceWords } from "../../text/chance-words.ts";
import { nameOfSuspect } from "../../text/names.ts";

/** What to do at once, above everything else; suspects with the same advice share one notice. */
export function StopNotices({
  knowledge,
  notices,
}: {
  readonly knowledge: Knowledge;
  readonly notices: Ranked["notices"];
}) {
  const bySay = new Map<string, Ranked["notices"][number][]>();
  for (const notice of notices) bySay.set(notice.say, [...(bySay.get(notice.say) ?? []), notice]);
  if (bySay.size === 0) return null;
  return (
    <section className="stop" aria-label="Stop notice">
      {[...bySay].map(([say, own]) => (
        <div key={say}>
          <p className="stop-say">
            <span className="stop-sign" aria-hidden="true">
              STOP
            </span>
            {say}
          </p>
          <ul className="small">
            {own.slice(0, 3).map((notice) => (
              <li key={notice.suspect}>
                {nameOfSuspect(knowledge, notice.suspect)}: {chanceWords(notice.probability)} that it is there
              </li>
            ))}
          </ul>
        </div>
      ))}
      <p className="small">Local rules and the maker&apos;s data come first.</p>
    </section>
  );
}
