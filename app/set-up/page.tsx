import type { Metadata } from "next";
import { SetUpScreen } from "../ui/people/set-up-screen.tsx";

export const metadata: Metadata = { title: "The first account" };

export default function Page() {
  return <SetUpScreen />;
}
