import type { Metadata } from "next";
import { AccountScreen } from "../ui/people/account-screen.tsx";

export const metadata: Metadata = { title: "Your account" };

export default function Page() {
  return <AccountScreen />;
}
