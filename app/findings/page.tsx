import type { Metadata } from "next";
import { findingsIndex } from "../../lib/knowledge/pages/index.ts";
import { siteKnowledge } from "../knowledge/load-knowledge.ts";
import { FindingsList } from "../ui/knowledge/findings-list.tsx";

export const metadata: Metadata = {
  title: "Findings",
  description: "Everything that can be complained of, seen, felt or measured, and which faults give it.",
};

export default function Page() {
  return <FindingsList index={findingsIndex(siteKnowledge())} />;
}
