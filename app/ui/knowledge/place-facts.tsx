import type { CarNeeds } from "../../../lib/knowledge/pages/index.ts";
import { needsWords } from "../../text/needs-words.ts";
import { Fact } from "../fact.tsx";

/** Where a thing is on a car, and on which cars. */
export function PlaceFacts({
  places,
  needs,
}: {
  readonly places: readonly string[];
  readonly needs: readonly CarNeeds[];
}) {
  return (
    <>
      <Fact name="Where">{places.join(", ")}</Fact>
      <Fact name="On which cars">{needs.length === 0 ? "every car" : needsWords(needs)}</Fact>
    </>
  );
}
