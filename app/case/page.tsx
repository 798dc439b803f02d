import type { Metadata } from "next";
import { Suspense } from "react";
import { CaseScreen } from "../ui/case/case-screen.tsx";

export const metadata: Metadata = { title: "Case" };

export default function CasePage() {
  return (
    <Suspense>
      <CaseScreen />
    </Suspense>
  );
}
