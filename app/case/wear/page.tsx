import type { Metadata } from "next";
import { Suspense } from "react";
import { WearScreen } from "../../ui/wear/wear-screen.tsx";

export const metadata: Metadata = { title: "Wear ahead" };

export default function WearPage() {
  return (
    <Suspense>
      <WearScreen />
    </Suspense>
  );
}
