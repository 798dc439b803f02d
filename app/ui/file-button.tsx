"use client";
import { useRef } from "react";

/** A button that lets a file be picked; the same file may be picked again after it was mended. */
export function FileButton({
  label,
  accept,
  disabled = false,
  onFile,
}: {
  readonly label: string;
  /** Kinds of file that are offered, as `accept` of an input takes them. */
  readonly accept: string;
  readonly disabled?: boolean;
  readonly onFile: (file: File) => void;
}) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <input
        ref={input}
        type="file"
        accept={accept}
        className="hidden"
        tabIndex={-1}
        aria-hidden="true"
        onChange={(event) => {
          const file = event.target.files?.[0];
          event.target.value = "";
          if (file !== undefined) onFile(file);
        }}
      />
      <button type="button" disabled={disabled} onClick={() => input.current?.click()}>
        {label}
      </button>
    </>
  );
}
