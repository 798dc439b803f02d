"use client";
import type { ReactNode } from "react";

/**
 * A form of one column that is sent by script.
 *
 * Its method is "post" all the same: sent before the script is there, what was typed must not end up in the address.
 */
export function PeopleForm({
  onSend,
  children,
}: {
  readonly onSend: () => void;
  readonly children: ReactNode;
}) {
  return (
    <form
      className="one-column"
      method="post"
      onSubmit={(event) => {
        event.preventDefault();
        onSend();
      }}
    >
      {children}
    </form>
  );
}
