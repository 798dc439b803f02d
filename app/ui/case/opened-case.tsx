"use client";
import Link from "next/link";
import { useSearchParams } from "next/navigation";
import type { ReactNode } from "react";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { useKnowledge } from "../../knowledge/use-knowledge.ts";
import { type OpenCase, useCase } from "../../store/use-case.ts";
import { type Settings, useSettings } from "../../store/use-settings.ts";
import { SiteHead } from "../site-head.tsx";

/** A case that is open, with what every screen of it works with. */
export interface Opened {
  readonly knowledge: Knowledge;
  readonly open: OpenCase;
  readonly settings: Settings;
  readonly onSettings: (change: Partial<Settings>) => void;
}

interface CaseProps {
  /** What stands there once knowledge and case have arrived. */
  readonly children: (opened: Opened) => ReactNode;
}

/** The case that the address names as `id`. */
export function CaseOfAddress({ children }: CaseProps) {
  const id = useSearchParams().get("id") ?? "";
  return (
    <OpenedCase key={id} id={id}>
      {children}
    </OpenedCase>
  );
}

/** A case by its id; until it is there, what hinders it, in words. */
export function OpenedCase({ id, children }: CaseProps & { readonly id: string }) {
  const knowledge = useKnowledge();
  const [settings, onSettings] = useSettings();
  const open = useCase(id, settings.by);
  if (knowledge.is === "ready" && open.status === "ready")
    return children({ knowledge: knowledge.value, open, settings, onSettings });
  return <CaseNotReady id={id} open={open} knowledge={knowledge} />;
}

/** What stands in place of a case that is not there (yet), in words. */
function CaseNotReady({
  id,
  open,
  knowledge,
}: {
  readonly id: string;
  readonly open: OpenCase;
  readonly knowledge: ReturnType<typeof useKnowledge>;
}) {
  return (
    <>
      <SiteHead />
      <main id="main" className="sheet">
        {knowledge.is === "failed" ? (
          <Trouble title="The knowledge did not arrive" text={knowledge.message} retry />
        ) : id === "" ? (
          <Trouble title="No case chosen" text="The address names no case." />
        ) : open.status === "missing" ? (
          <Trouble
            title="This case is not on this device"
            text="It may be on another device that has not sent it yet, belong to somebody else, or have been removed."
          />
        ) : open.status === "away" ? (
          <Trouble
            title="This case is not on this device"
            text="The workshop's server does not answer, so it cannot be fetched now. It opens by itself once the server answers."
            retry
          />
        ) : open.status === "failed" ? (
          <Trouble title="This device's store could not be read" text={open.trouble ?? ""} retry />
        ) : (
          <>
            <h1>Case</h1>
            <p role="status">Opening the case ...</p>
          </>
        )}
      </main>
    </>
  );
}

function Trouble({
  title,
  text,
  retry = false,
}: {
  readonly title: string;
  readonly text: string;
  readonly retry?: boolean;
}) {
  return (
    <>
      <h1>{title}</h1>
      <p>{text}</p>
      <p className="row">
        {retry && (
          <button type="button" className="main" onClick={() => window.location.reload()}>
            Try again
          </button>
        )}
        <Link className="button" href="/">
          All cases
        </Link>
      </p>
    </>
  );
}
