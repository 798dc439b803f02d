"use client";
import { useState } from "react";
import { copyText, FROM_THE_FIELD } from "./copy-text.ts";

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
  const [news, setNews] = useState("");
  return (
    <>
      <button
        type="button"
        className={main ? "main" : undefined}
        onClick={() => void copyText(text, FROM_THE_FIELD).then(setNews)}
      >
        {label}
      </button>
      <span role="status" className="small">
        {news}
      </span>
    </>
  );
}
