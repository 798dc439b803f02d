"use client";
import type { CaseState } from "../../../lib/case/case-state.ts";
import { useSync } from "../../sync/use-sync.ts";
import { Fold } from "../fold.tsx";
import { Failed } from "../people/failed.tsx";
import { useRequest } from "../people/use-request.ts";
import { SheetPart } from "../sheet-part.tsx";
import { PhotoList } from "./photo-list.tsx";
import { type PickedPhoto, PhotoPicker } from "./photo-picker.tsx";

/** Photos of a case, and a way to add one while the server answers: they are kept there and nowhere else. */
export function PhotosPart({ state, by }: { readonly state: CaseState; readonly by: string }) {
  const { standing } = useSync();
  const { busy, failed, send } = useRequest();
  const { caseId, photos } = state;
  const answers = standing.is === "answers";
  if (photos.length === 0 && !answers) return null;
  const add = async ({ id, file, caption }: PickedPhoto): Promise<boolean> => {
    const query = new URLSearchParams({
      id,
      ...(caption !== "" && { caption }),
      ...(by.trim() !== "" && { by: by.trim() }),
    }).toString();
    const path = `/api/v1/cases/${encodeURIComponent(caseId)}/photos?${query}`;
    return (await send({ method: "POST", path, file })) !== undefined;
  };
  return (
    <SheetPart id="photos" title="Photos">
      <PhotoList caseId={caseId} photos={photos} />
      {answers ? (
        <Fold title="Add a photo">
          <PhotoPicker sending={busy} onSend={add} />
          <Failed words={failed} />
        </Fold>
      ) : (
        <p className="small soft">
          Photos are kept on the workshop&apos;s server; one can be added when it answers.
        </p>
      )}
    </SheetPart>
  );
}
