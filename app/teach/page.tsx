import type { Metadata } from "next";
import { TeachScreen } from "../ui/teach/teach-screen.tsx";

export const metadata: Metadata = { title: "Exercises to hand out" };

export default function TeachPage() {
  return <TeachScreen />;
}
