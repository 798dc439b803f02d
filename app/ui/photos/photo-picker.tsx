"use client";
import { useEffect, useRef, useState } from "react";
import { newId } from "../../store/new-entry.ts";
import { smallerPhoto } from "./smaller-photo.ts";

/** A photo that was picked, ready to be sent. */
export interface PickedPhoto {
  /** The same for every try at sending it. */
  readonly id: string;
  readonly file: Blob;
  readonly caption: string;
}

interface Picked {
  readonly id: string;
  readonly file: Blob;
  readonly address: string;
}

/** Picks a photo, shows it, and sends it with a line of words. It stays picked until it has arrived. */
export function PhotoPicker({
  sending,
  onPicked,
  onSend,
}: {
  readonly sending: boolean;
  /** A photo is picked and not yet sent, or no longer. */
  readonly onPicked?: (waits: boolean) => void;
  /** Whether it has arrived. */
  readonly onSend: (photo: PickedPhoto) => Promise<boolean>;
}) {
  const [picked, setPicked] = useState<Picked>();
  const [caption, setCaption] = useState("");
  const [making, setMaking] = useState(false);
  const input = useRef<HTMLInputElement>(null);
  const address = picked?.address;
  useEffect(() => () => URL.revokeObjectURL(address ?? ""), [address]);

  const pick = async (file: File | undefined) => {
    if (file === undefined) return;
    setMaking(true);
    const smaller = await smallerPhoto(file);
    setMaking(false);
    onPicked?.(true);
    setPicked({ id: newId(), file: smaller, address: URL.createObjectURL(smaller) });
  };
  const clear = () => {
    setPicked(undefined);
    onPicked?.(false);
    setCaption("");
    if (input.current !== null) input.current.value = "";
  };
  const send = async () => {
    if (picked === undefined) return;
    const { id, file } = picked;
    if (await onSend({ id, file, caption: caption.trim() })) clear();
  };

  return (
    <div className="photo-picker">
      <label className="button form-choice" htmlFor="photo-file">
        {picked === undefined ? "Take or choose a photo" : "Choose another photo"}
      </label>
      <input
        ref={input}
        id="photo-file"
        className="hidden"
        type="file"
        // Named one by one: a phone that keeps its pictures otherwise then turns them into one of these.
        accept="image/jpeg,image/png,image/webp"
        disabled={sending}
        onChange={(event) => void pick(event.target.files?.[0])}
      />
      {making && <p role="status">Reading the photo ...</p>}
      {picked !== undefined && (
        <>
          {/* oxlint-disable-next-line next/no-img-element -- a picture of this device: no server could make it smaller */}
          <img className="photo-preview" src={picked.address} alt="The one that you picked" />
          <label htmlFor="photo-caption">What does it show?</label>
          <input
            id="photo-caption"
            value={caption}
            maxLength={200}
            autoComplete="off"
            disabled={sending}
            onChange={(event) => setCaption(event.target.value)}
          />
          <button type="button" className="main form-choice" disabled={sending} onClick={() => void send()}>
            {sending ? "Sending the photo ..." : "Send the photo"}
          </button>
          <button type="button" className="form-choice" disabled={sending} onClick={clear}>
            Do not send it
          </button>
        </>
      )}
    </div>
  );
}
