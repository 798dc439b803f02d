import type { Metadata } from "next";
import { NewCaseScreen } from "../../ui/cases/new-case-screen.tsx";

export const metadata: Metadata = { title: "New case" };

export default function NewCasePage() {
  return <NewCaseScreen />;
}
