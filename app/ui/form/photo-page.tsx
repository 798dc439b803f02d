"use client";
import { useState } from "react";
import type { View } from "./view.ts";
import { PhotoPicker } from "../photos/photo-picker.tsx";
import type { Form } from "./use-form.ts";
import { PageTitle } from "./page-title.tsx";

/** A photo or two, for those who like; and the end of the form. */
export function PhotoPage({
  view,
  form,
  onBack,
  onTakeAway,
  onDone,
}: {
  readonly view: View;
  readonly form: Form;
  /** Left out: a photo was said last, and is taken away by its own button. */
  readonly onBack: (() => void) | undefined;
  readonly onTakeAway: (id: string) => Promise<unknown>;
  readonly onDone: () => Promise<void>;
}) {
  // Whoever picked a photo means to send it: nothing else leads on until it is sent or let go.
  const [waits, setWaits] = useState(false);
  const photos = view.said.filter(({ kind }) => kind === "photo");
  const last = view.said.at(-1);
  return (
    <>
      <PageTitle>A photo, if you like</PageTitle>
      <p>
        Of a tyre, a puddle below the car, a lamp that is lit: whatever shows what you mean. Only while the
        car stands in a safe place, and never from below it. It is kept without the place where it was taken.
      </p>
      {photos.length > 0 && (
        <p role="status">
          {photos.length === 1 ? "1 photo has arrived." : `${photos.length} photos have arrived.`}
        </p>
      )}
      {last?.kind === "photo" && (
        <button
          type="button"
          className="plain form-back"
          disabled={form.sending}
          onClick={() => void onTakeAway(last.id)}
        >
          Take the last photo away again
        </button>
      )}
      {view.photosLeft > 0 ? (
        <PhotoPicker
          sending={form.sending}
          onPicked={setWaits}
          onSend={async ({ id, file, caption }) => {
            const query = new URLSearchParams({ id, ...(caption !== "" && { caption }) }).toString();
            const sent = await form.send({ method: "POST", path: `/api/v1/form/photos?${query}`, file });
            return sent !== undefined;
          }}
        />
      ) : (
        <p>That is all the room there is for photos.</p>
      )}
      {!waits && (
        <button
          type="button"
          className="main form-choice"
          disabled={form.sending}
          onClick={() => void onDone()}
        >
          I am done
        </button>
      )}
      {onBack !== undefined && !waits && (
        <button type="button" className="plain form-back" disabled={form.sending} onClick={onBack}>
          Back
        </button>
      )}
    </>
  );
}
