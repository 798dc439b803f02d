"use client";
import { useState } from "react";
import type { CaseInList } from "../../store/use-cases.ts";
import { serverDoor } from "../../sync/door.ts";
import { failureWords } from "../../sync/failure-words.ts";
import { useSync } from "../../sync/use-sync.ts";

/** Asks once more before a case goes, and says what goes with it. */
export function RemoveCase({
  item,
  name,
  onRemove,
  onKeep,
}: {
  readonly item: CaseInList;
  readonly name: string;
  readonly onRemove: (id: string) => void;
  readonly onKeep: () => void;
}) {
  const { standing, me } = useSync();
  const [failed, setFailed] = useState<string>();
  const answers = standing.is === "answers";
  const onServer = item.serverVersion !== undefined;
  const mayForAll = onServer && answers && (me?.local === true || me?.person?.role === "owner");

  const removeForAll = async () => {
    const path = `/api/v1/cases/${encodeURIComponent(item.id)}`;
    const head = await serverDoor.ask({ method: "GET", path });
    if (head.is === "lost" || head.etag === undefined) return setFailed(failureWords(head));
    const reply = await serverDoor.ask({ method: "DELETE", path, ifMatch: head.etag });
    if (reply.is === "lost" || reply.status >= 300) return setFailed(failureWords(reply));
    onRemove(item.id);
  };

  return (
    <div className="row" role="group" aria-label={`Remove ${name}`}>
      <span>
        {item.waiting > 0 && answers && (
          <strong>{item.waiting} of its entries are on this device only and would be lost. </strong>
        )}
        {onServer
          ? "Remove it from this device? It stays on the workshop's server."
          : "Remove this case from this device for good?"}
      </span>
      <button type="button" onClick={() => onRemove(item.id)}>
        {onServer ? "Remove it here" : "Remove it"}
      </button>
      {mayForAll && (
        <button type="button" onClick={() => void removeForAll()}>
          Remove it for everybody
        </button>
      )}
      <button type="button" onClick={onKeep}>
        Keep it
      </button>
      {failed !== undefined && (
        <p className="trouble" role="alert">
          It was not removed. {failed}
        </p>
      )}
    </div>
  );
}
