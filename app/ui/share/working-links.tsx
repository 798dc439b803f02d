import { momentWords } from "../../text/moment.ts";
import type { CaseLink } from "./links.ts";
import type { Links } from "./use-links.ts";

/** Links that still work, each with a way to end it. */
export function WorkingLinks({
  held,
  words,
}: {
  readonly held: Links;
  /** What is said of a link before its time. */
  readonly words: (link: CaseLink) => string;
}) {
  if (held.links.length === 0) return null;
  return (
    <ul className="plain-list" aria-label="Links that work">
      {held.links.map((link) => (
        <li key={link.id} className="case-line">
          <span className="small">
            {words(link)}, works until {momentWords(link.expiresAt)}
          </span>
          <button
            type="button"
            className="plain"
            disabled={held.busy}
            aria-label={`End it now: the link made ${momentWords(link.madeAt)}`}
            onClick={() => void held.revoke(link.id)}
          >
            End it now
          </button>
        </li>
      ))}
    </ul>
  );
}
