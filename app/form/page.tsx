import type { Metadata } from "next";
import { FormScreen } from "../ui/form/form-screen.tsx";

export const metadata: Metadata = { title: "Questions about your car", robots: { index: false } };

export default function Page() {
  return <FormScreen />;
}
