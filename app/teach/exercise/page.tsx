import type { Metadata } from "next";
import { Suspense } from "react";
import { ExerciseScreen } from "../../ui/teach/exercise-screen.tsx";

export const metadata: Metadata = { title: "Set an exercise" };

export default function SetExercisePage() {
  return (
    <Suspense>
      <ExerciseScreen />
    </Suspense>
  );
}
