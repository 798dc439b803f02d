import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { checkPage } from "../../../lib/knowledge/pages/index.ts";
import { siteKnowledge } from "../../knowledge/load-knowledge.ts";
import { minutesWords } from "../../text/amounts.ts";
import { capital } from "../../text/names.ts";
import { CheckSheet } from "../../ui/knowledge/check-sheet.tsx";

export const dynamicParams = false;

interface Props {
  readonly params: Promise<{ readonly id: string }>;
}

export function generateStaticParams(): { id: string }[] {
  return siteKnowledge().checks.map(({ id }) => ({ id }));
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const page = checkPage(siteKnowledge(), (await params).id);
  if (page === undefined) return {};
  const { check, setUp, settles } = page;
  const found = settles.map(({ observation }) => observation.name).join("; ");
  return {
    title: capital(check.name),
    description: `A check of ${minutesWords(check.minutes)}, car ${setUp?.name ?? check.setUp}. It settles: ${found}.`,
  };
}

/** A check: how it is made and what its results tell. */
export default async function Page({ params }: Props) {
  const knowledge = siteKnowledge();
  const page = checkPage(knowledge, (await params).id);
  if (page === undefined) notFound();
  return <CheckSheet knowledge={knowledge} page={page} />;
}
