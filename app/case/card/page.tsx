import type { Metadata } from "next";
import { Suspense } from "react";
import { CardScreen } from "../../ui/card/card-screen.tsx";

export const metadata: Metadata = { title: "Job card" };

export default function CardPage() {
  return (
    <Suspense>
      <CardScreen />
    </Suspense>
  );
}
