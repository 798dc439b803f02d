import type { ReactNode } from "react";

/** A line of a list of facts (`dl`): its name, and what holds. */
export function Fact({ name, children }: { readonly name: ReactNode; readonly children: ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}
