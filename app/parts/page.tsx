import type { Metadata } from "next";
import { partsIndex } from "../../lib/knowledge/pages/index.ts";
import { siteKnowledge } from "../knowledge/load-knowledge.ts";
import { PartsList } from "../ui/knowledge/parts-list.tsx";

export const metadata: Metadata = {
  title: "Parts",
  description:
    "Every part that can be behind a noise, shake, pull or worn tyre, by place and suspension layout.",
};

export default function Page() {
  return <PartsList areas={partsIndex(siteKnowledge())} />;
}
