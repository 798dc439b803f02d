import type { Metadata } from "next";
import { siteVersions } from "../knowledge/versions.ts";
import { VersionsSheet } from "../ui/health/versions-sheet.tsx";

export const dynamic = "force-static";

export const metadata: Metadata = {
  title: "Versions of the knowledge",
  description:
    "What each version of the knowledge changed, in words and in log-odds, and which worked cases moved.",
};

export default async function Page() {
  return <VersionsSheet {...(await siteVersions())} />;
}
