import type { Metadata } from "next";
import { siteHealth } from "../knowledge/site-health.ts";
import { HealthSheet } from "../ui/health/health-sheet.tsx";

export const dynamic = "force-static";

export const metadata: Metadata = {
  title: "Health of the knowledge",
  description:
    "What the knowledge covers and lacks: rules kept, faults that are hard to tell apart or to reach, links without a source, priors against published shares.",
};

export default function Page() {
  return <HealthSheet health={siteHealth()} />;
}
