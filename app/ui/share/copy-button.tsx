"use client";
import { useState } from "react";

/** Copies a text, and says whether that worked. */
export function CopyButton({
  text,
  label,
  main = false,
}: {
  readonly text: string;
  readonly label: string;
  readonly main?: boolean;
}) {
  const [copied, setCopied] = useState<"yes" | "no">();
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text);
      setCopied("yes");
    } catch {
      setCopied("no");
    }
  };
  return (
    <>
      <button type="button" className={main ? "main" : undefined} onClick={() => void copy()}>
        {label}
      </button>
      <span role="status" className="small">
        {copied === "yes" && "Copied."}
        {copied === "no" && "It could not be copied by itself: hold the field above and copy it from there."}
      </span>
    </>
  );
}
