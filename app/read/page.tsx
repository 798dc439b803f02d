import type { Metadata } from "next";
import { ReadScreen } from "../ui/knowledge/read-screen.tsx";

// The screen gives its title itself, once it knows what is read.
export const metadata: Metadata = { title: null };

/** Stands in for the pages of records on a device that keeps the app: the address says which one is meant. */
export default function ReadPage() {
  return <ReadScreen />;
}
