import type { Metadata } from "next";
import { Suspense } from "react";
import { DeskScreen } from "../../ui/desk/desk-screen.tsx";

export const metadata: Metadata = { title: "Advisor's desk" };

export default function DeskPage() {
  return (
    <Suspense>
      <DeskScreen />
    </Suspense>
  );
}
