import type { Metadata } from "next";
import { Suspense } from "react";
import { HandoverScreen } from "../../ui/desk/handover-screen.tsx";

export const metadata: Metadata = { title: "Hand-over" };

export default function HandoverPage() {
  return (
    <Suspense>
      <HandoverScreen />
    </Suspense>
  );
}
