import type { Metadata } from "next";
import { Suspense } from "react";
import { KnowledgeSheet } from "../ui/knowledge/knowledge-sheet.tsx";
import { SearchEverything } from "../ui/knowledge/search-everything.tsx";

export const metadata: Metadata = {
  title: "Search",
  description: "Parts, ways they fail, checks and findings by any of their names.",
};

export default function Page() {
  return (
    <KnowledgeSheet at="search" title="Search">
      <Suspense>
        <SearchEverything />
      </Suspense>
    </KnowledgeSheet>
  );
}
