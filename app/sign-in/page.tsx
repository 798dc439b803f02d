import type { Metadata } from "next";
import { SignInScreen } from "../ui/people/sign-in-screen.tsx";

export const metadata: Metadata = { title: "Sign in" };

export default function Page() {
  return <SignInScreen />;
}
