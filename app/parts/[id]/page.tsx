import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { partPage } from "../../../lib/knowledge/pages/index.ts";
import { siteKnowledge } from "../../knowledge/load-knowledge.ts";
import { capital } from "../../text/names.ts";
import { PartSheet } from "../../ui/knowledge/part-sheet.tsx";

export const dynamicParams = false;

interface Props {
  readonly params: Promise<{ readonly id: string }>;
}

export function generateStaticParams(): { id: string }[] {
  return siteKnowledge().parts.map(({ id }) => ({ id }));
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const page = partPage(siteKnowledge(), (await params).id);
  if (page === undefined) return {};
  const { part, faults } = page;
  const ways = faults.map(({ fault }) => fault.name).join("; ");
  return {
    title: capital(part.name),
    description: `${part.about} How it fails (${ways}), how it shows and how it is proven.`,
  };
}

/** A part, each way in which it fails, and the proof. */
export default async function Page({ params }: Props) {
  const knowledge = siteKnowledge();
  const page = partPage(knowledge, (await params).id);
  if (page === undefined) notFound();
  return <PartSheet knowledge={knowledge} page={page} />;
}
