import type { Metadata } from "next";
import { PeopleScreen } from "../ui/people/people-screen.tsx";

export const metadata: Metadata = { title: "People of the workshop" };

export default function Page() {
  return <PeopleScreen />;
}
