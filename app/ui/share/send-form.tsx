"use client";
import { mailAddress } from "../../text/mail-address.ts";
import { dayWords } from "../../text/moment.ts";
import { CopyButton } from "./copy-button.tsx";
import { addressOf, LinkOnce } from "./link-once.tsx";
import type { MadeLink } from "./links.ts";

/** Names of this machine for itself (RFC 6761, 6.3; RFC 1122, 3.2.1.3; RFC 4291, 2.5.3). */
const LOOPBACK = /^(localhost|.+\.localhost|127(\.\d{1,3}){3}|\[::1\])$/;

/** A link to a form just made, and the ways to send it: it is shown this once. */
export function SendForm({ made, vehicle }: { readonly made: MadeLink; readonly vehicle: string }) {
  const address = addressOf("/form", made.token);
  const car = vehicle === "" ? "your car" : `your ${vehicle}`;
  const text = `Hello, please answer a few short questions about ${car}, so that we are ready for it: ${address} (the link works until ${dayWords(made.expiresAt)}; no account is needed)`;
  return (
    <div className="notice">
      {LOOPBACK.test(window.location.hostname) && (
        <p className="trouble">
          This address leads to this very machine: a customer elsewhere cannot open it. Open the app by the
          address that the workshop is found at from outside, and make the link there.
        </p>
      )}
      <LinkOnce
        id="form-link"
        label="The link for the customer, shown this once"
        address={address}
        expiresAt={made.expiresAt}
      />
      <label htmlFor="form-text">A message to send it with</label>
      <textarea
        id="form-text"
        className="low"
        rows={4}
        readOnly
        value={text}
        onFocus={(event) => event.currentTarget.select()}
      />
      <p className="row">
        <CopyButton label="Copy the message" text={text} />
        <a className="button" href={mailAddress({ subject: `Questions about ${car}`, body: text })}>
          Write a mail
        </a>
        <a className="button" href={`sms:?&body=${encodeURIComponent(text)}`}>
          Write a text message
        </a>
      </p>
      <p className="small soft">
        Whoever has the link can answer in the customer&apos;s place: send it to them alone.
      </p>
    </div>
  );
}
