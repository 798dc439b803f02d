import type { Metadata } from "next";
import { checksIndex } from "../../lib/knowledge/pages/index.ts";
import { siteKnowledge } from "../knowledge/load-knowledge.ts";
import { ChecksList } from "../ui/knowledge/checks-list.tsx";

export const metadata: Metadata = {
  title: "Checks",
  description: "Every check by the state that the car must be in, with its minutes and who can make it.",
};

export default function Page() {
  return <ChecksList groups={checksIndex(siteKnowledge())} />;
}
