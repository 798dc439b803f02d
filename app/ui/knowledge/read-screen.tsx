"use client";
import { usePathname } from "next/navigation";
import { type ReactNode, useEffect } from "react";
import { checkPage, findingPage, partPage } from "../../../lib/knowledge/pages/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { useKnowledge } from "../../knowledge/use-knowledge.ts";
import { recordOf } from "../../offline/kept-pages.ts";
import { capital } from "../../text/names.ts";
import { PlainPage } from "../plain-page.tsx";
import { CheckSheet } from "./check-sheet.tsx";
import { FindingSheet } from "./finding-sheet.tsx";
import { PartSheet } from "./part-sheet.tsx";

interface Sheet {
  readonly title: string;
  readonly sheet: ReactNode;
}

/** The page of a record, set in the browser from the knowledge that lies there. */
export function ReadScreen() {
  const pathname = usePathname();
  const knowledge = useKnowledge();
  const record = recordOf(pathname);
  if (knowledge.is === "failed") {
    return <Plain title="The knowledge did not arrive" text={`${knowledge.message} Load the page again.`} />;
  }
  if (knowledge.is === "loading") return <Plain title="Knowledge" text="Getting the page ..." />;
  // Also the page for an address that is not kept on this device and could not be fetched.
  if (record === undefined) {
    return (
      <Plain title="This page is not here" text="It is not kept on this device. Try again with a network." />
    );
  }
  const found = sheetOf(knowledge.value.knowledge, record.kind, record.id);
  return found === undefined ? (
    <Plain title="There is no such page" text="The address may be mistyped or old." />
  ) : (
    <Read key={pathname} {...found} />
  );
}

function sheetOf(knowledge: Knowledge, kind: string, id: string): Sheet | undefined {
  if (kind === "parts") {
    const page = partPage(knowledge, id);
    return page && { title: page.part.name, sheet: <PartSheet knowledge={knowledge} page={page} /> };
  }
  if (kind === "checks") {
    const page = checkPage(knowledge, id);
    return page && { title: page.check.name, sheet: <CheckSheet knowledge={knowledge} page={page} /> };
  }
  const page = findingPage(knowledge, id);
  return page && { title: page.record.name, sheet: <FindingSheet knowledge={knowledge} page={page} /> };
}

function Read({ title, sheet }: Sheet) {
  useEffect(() => {
    // The place that the address names was not there yet when the browser looked for it.
    const place = decodeURIComponent(window.location.hash.slice(1));
    if (place === "") window.scrollTo(0, 0);
    else document.getElementById(place)?.scrollIntoView();
  }, []);
  return (
    <>
      <title>{`${capital(title)} - Cornerwise`}</title>
      {sheet}
    </>
  );
}

function Plain({ title, text }: { readonly title: string; readonly text: string }) {
  return (
    <>
      <title>{`${title} - Cornerwise`}</title>
      <PlainPage title={title}>
        <p role="status">{text}</p>
      </PlainPage>
    </>
  );
}
