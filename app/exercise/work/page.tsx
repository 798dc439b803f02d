import type { Metadata } from "next";
import { Suspense } from "react";
import { WorkScreen } from "../../ui/exercise/work-screen.tsx";

export const metadata: Metadata = { title: "Exercise" };

export default function Page() {
  return (
    <Suspense>
      <WorkScreen />
    </Suspense>
  );
}
