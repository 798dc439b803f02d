"use client";
import { useState } from "react";
import type { CaseState } from "../../../lib/case/case-state.ts";

type CasePhoto = CaseState["photos"][number];

/** Photos of a case, small; each opens large by itself. */
export function PhotoList({
  caseId,
  photos,
}: {
  readonly caseId: string;
  readonly photos: readonly CasePhoto[];
}) {
  if (photos.length === 0) return null;
  return (
    <ul className="photos">
      {photos.map((photo) => (
        <li key={photo.entry}>
          <Thumbnail caseId={caseId} photo={photo} />
        </li>
      ))}
    </ul>
  );
}

function Thumbnail({ caseId, photo }: { readonly caseId: string; readonly photo: CasePhoto }) {
  const [away, setAway] = useState(false);
  const address = `/api/v1/cases/${encodeURIComponent(caseId)}/photos/${encodeURIComponent(photo.photo)}`;
  const from = photo.from === undefined ? "" : " (the customer, by the form)";
  const words = `${photo.caption ?? "Photo"}${from}`;
  if (away)
    return (
      <p className="away small">
        {words}: it is kept on the workshop&apos;s server, which does not show it now.{" "}
        <button type="button" className="plain" onClick={() => setAway(false)}>
          Try again
        </button>
      </p>
    );
  return (
    <a href={address} target="_blank" rel="noreferrer" aria-label={`Open large: ${words}`}>
      {/* oxlint-disable-next-line next/no-img-element -- only for who may see the case, and small as it is kept */}
      <img
        src={address}
        alt=""
        width={photo.width}
        height={photo.height}
        loading="lazy"
        onError={() => setAway(true)}
      />
      <span className="small">{words}</span>
    </a>
  );
}
