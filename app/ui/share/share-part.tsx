"use client";
import { useCallback, useEffect, useState } from "react";
import { type Reply, serverDoor } from "../../sync/door.ts";
import { failureWords } from "../../sync/failure-words.ts";
import { useSync } from "../../sync/use-sync.ts";
import { momentWords } from "../../text/moment.ts";
import { Choice } from "../choice.tsx";
import { Fold } from "../fold.tsx";
import { Failed } from "../people/failed.tsx";
import { useRequest } from "../people/use-request.ts";
import { type CaseLink, LinksReply, MadeLink } from "./links.ts";
import { NewLink } from "./new-link.tsx";

const DAYS = [
  { value: "1", name: "1 day" },
  { value: "7", name: "7 days" },
  { value: "30", name: "30 days" },
  { value: "90", name: "90 days" },
] as const;

/** Links by which somebody outside the workshop reads this one case; nothing where none can be made. */
export function SharePart({ caseId }: { readonly caseId: string }) {
  const { standing, me } = useSync();
  const may = me?.local === true || (me?.person !== undefined && me.person.role !== "trainee");
  if (standing.is !== "answers" || !may) return null;
  return (
    <Fold title="Let somebody outside read this case">
      <Links caseId={caseId} />
    </Fold>
  );
}

function stillWorking(links: readonly CaseLink[]): readonly CaseLink[] {
  const now = new Date().toISOString();
  return links.filter((link) => link.revokedAt === undefined && link.expiresAt > now);
}

function Links({ caseId }: { readonly caseId: string }) {
  const [links, setLinks] = useState<readonly CaseLink[]>([]);
  const [trouble, setTrouble] = useState<string>();
  const [days, setDays] = useState<(typeof DAYS)[number]["value"]>("7");
  const [made, setMade] = useState<MadeLink>();
  const { busy, failed, send } = useRequest();
  const path = `/api/v1/cases/${encodeURIComponent(caseId)}/links`;

  const ask = useCallback(() => serverDoor.ask({ method: "GET", path }), [path]);
  const show = useCallback((reply: Reply) => {
    const list = reply.is === "reply" && reply.status === 200 ? LinksReply.safeParse(reply.json) : undefined;
    if (list?.success === true) setLinks(stillWorking(list.data.links));
    else if (reply.is === "reply" && reply.status === 404)
      setTrouble("This case is not on the server yet; it can be shared once it is.");
    else setTrouble(failureWords(reply));
  }, []);
  useEffect(() => {
    let gone = false;
    void ask().then((reply) => !gone && show(reply));
    return () => {
      gone = true;
    };
  }, [ask, show]);

  const make = async () => {
    const reply = await send({ method: "POST", path, body: { kind: "read", days: Number(days) } });
    const link = MadeLink.safeParse(reply?.json);
    if (link.success) setMade(link.data);
    show(await ask());
  };
  const revoke = async (id: string) => {
    await send({ method: "DELETE", path: `/api/v1/links/${encodeURIComponent(id)}` });
    setMade((old) => (old?.id === id ? undefined : old));
    show(await ask());
  };

  if (trouble !== undefined) return <p className="notice">{trouble}</p>;
  return (
    <>
      <p className="small soft">
        Whoever has the link reads this case as it stands then, the customer&apos;s name included, without an
        account. They can change nothing and see no other case.
      </p>
      <div className="one-column">
        <Choice id="share-days" label="The link works for" value={days} options={DAYS} onChange={setDays} />
        <button type="button" disabled={busy} onClick={() => void make()}>
          Make a link
        </button>
      </div>
      <Failed words={failed} />
      {made !== undefined && <NewLink made={made} />}
      {links.length > 0 && (
        <ul className="plain-list" aria-label="Links that work">
          {links.map((link) => (
            <li key={link.id} className="case-line">
              <span className="small">
                Made {momentWords(link.madeAt)}, works until {momentWords(link.expiresAt)}
              </span>
              <button
                type="button"
                className="plain"
                disabled={busy}
                aria-label={`End it now: the link made ${momentWords(link.madeAt)}`}
                onClick={() => void revoke(link.id)}
              >
                End it now
              </button>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
