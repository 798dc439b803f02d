import type { Metadata } from "next";
import { Suspense } from "react";
import { PlayScreen } from "../../ui/shop/play-screen.tsx";

export const metadata: Metadata = { title: "Free play, run-out and wear limits" };

export default function PlayPage() {
  return (
    <Suspense>
      <PlayScreen />
    </Suspense>
  );
}
