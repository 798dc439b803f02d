import type { Metadata } from "next";
import { Suspense } from "react";
import { SheetScreen } from "../../ui/teach/sheet-screen.tsx";

export const metadata: Metadata = { title: "Exercise on paper" };

export default function ExerciseSheetPage() {
  return (
    <Suspense>
      <SheetScreen />
    </Suspense>
  );
}
