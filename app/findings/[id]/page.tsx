import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { type FindingPage, findingIds, findingPage } from "../../../lib/knowledge/pages/index.ts";
import { siteKnowledge } from "../../knowledge/load-knowledge.ts";
import { capital } from "../../text/names.ts";
import { FindingSheet } from "../../ui/knowledge/finding-sheet.tsx";

export const dynamicParams = false;

interface Props {
  readonly params: Promise<{ readonly id: string }>;
}

const ABOUT: { readonly [K in FindingPage["kind"]]: (name: string) => string } = {
  complaint: (name) => `The complaint "${name}": what it can be like and which faults give it.`,
  feature: (name) => `"${name}" as a feature of a complaint: how it is asked for and which faults have it.`,
  observation: (name) =>
    `"${name}" as found by a check: which checks show it, what is normal, what gives it.`,
  context: (name) => `"${name}": what that makes likelier or less likely on a car.`,
};

export function generateStaticParams(): { id: string }[] {
  return findingIds(siteKnowledge()).map((id) => ({ id }));
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const page = findingPage(siteKnowledge(), (await params).id);
  if (page === undefined) return {};
  return { title: capital(page.record.name), description: ABOUT[page.kind](page.record.name) };
}

/** A complaint, a feature of one, a finding of a check, or something that happened lately. */
export default async function Page({ params }: Props) {
  const knowledge = siteKnowledge();
  const page = findingPage(knowledge, (await params).id);
  if (page === undefined) notFound();
  return <FindingSheet knowledge={knowledge} page={page} />;
}
