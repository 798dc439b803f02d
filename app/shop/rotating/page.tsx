import type { Metadata } from "next";
import { Suspense } from "react";
import { RotatingScreen } from "../../ui/shop/rotating-screen.tsx";

export const metadata: Metadata = { title: "Turning parts" };

export default function RotatingPage() {
  return (
    <Suspense>
      <RotatingScreen />
    </Suspense>
  );
}
