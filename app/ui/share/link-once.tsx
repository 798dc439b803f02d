"use client";
import { momentWords } from "../../text/moment.ts";
import { CopyButton } from "./copy-button.tsx";

/** The address of a page that a token opens. */
export function addressOf(path: `/${string}`, token: string): string {
  // Behind the #: what stands there is not sent to any server and so stands in no log.
  return `${window.location.origin}${path}#${token}`;
}

interface FieldProps {
  readonly id: string;
  readonly label: string;
  readonly address: string;
}

/** A link just made, in a field to copy it from: it is shown this once. */
export function LinkField({ id, label, address }: FieldProps) {
  return (
    <>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        readOnly
        value={address}
        autoComplete="off"
        onFocus={(event) => event.currentTarget.select()}
      />
    </>
  );
}

/** A link just made: the one time that it can be copied, and until when it works. */
export function LinkOnce({ expiresAt, ...field }: FieldProps & { readonly expiresAt: string }) {
  return (
    <>
      <LinkField {...field} />
      <p className="row">
        <CopyButton main label="Copy the link" text={field.address} />
        <span className="small">It works until {momentWords(expiresAt)}.</span>
      </p>
    </>
  );
}
