import type { Metadata } from "next";
import { Suspense } from "react";
import { DebriefScreen } from "../../ui/exercise/debrief-screen.tsx";

export const metadata: Metadata = { title: "Debrief of an exercise" };

export default function Page() {
  return (
    <Suspense>
      <DebriefScreen />
    </Suspense>
  );
}
