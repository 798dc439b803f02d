import type { Metadata } from "next";
import { SharedScreen } from "../ui/share/shared-screen.tsx";

export const metadata: Metadata = { title: "A case to read", robots: { index: false } };

export default function Page() {
  return <SharedScreen />;
}
