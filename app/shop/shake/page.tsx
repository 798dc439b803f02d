import type { Metadata } from "next";
import { Suspense } from "react";
import { ShakeScreen } from "../../ui/shake/shake-screen.tsx";

export const metadata: Metadata = { title: "Measure a shake" };

export default function ShakePage() {
  return (
    <Suspense>
      <ShakeScreen />
    </Suspense>
  );
}
