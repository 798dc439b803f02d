import type { Metadata } from "next";
import { BeginScreen } from "../ui/exercise/begin-screen.tsx";

export const metadata: Metadata = { title: "Work an exercise" };

export default function Page() {
  return <BeginScreen />;
}
