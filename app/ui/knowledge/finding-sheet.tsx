import type { FindingPage } from "../../../lib/knowledge/pages/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { ComplaintSheet } from "./complaint-sheet.tsx";
import { ContextSheet } from "./context-sheet.tsx";
import { FeatureSheet } from "./feature-sheet.tsx";
import { ObservationSheet } from "./observation-sheet.tsx";

/** Everything that is known of a finding of any kind. */
export function FindingSheet({
  knowledge,
  page,
}: {
  readonly knowledge: Knowledge;
  readonly page: FindingPage;
}) {
  switch (page.kind) {
    case "complaint":
      return <ComplaintSheet knowledge={knowledge} page={page} />;
    case "feature":
      return <FeatureSheet knowledge={knowledge} page={page} />;
    case "observation":
      return <ObservationSheet knowledge={knowledge} page={page} />;
    case "context":
      return <ContextSheet knowledge={knowledge} page={page} />;
  }
}
