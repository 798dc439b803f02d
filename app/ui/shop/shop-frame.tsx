"use client";
import Link from "next/link";
import { useSearchParams } from "next/navigation";
import type { ComponentType, ReactNode } from "react";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { useKnowledge } from "../../knowledge/use-knowledge.ts";
import { type OpenCase, useCase } from "../../store/use-case.ts";
import { type Settings, useSettings } from "../../store/use-settings.ts";
import { CaseNotReady } from "../case/case-screen.tsx";
import { SiteHead } from "../site-head.tsx";

/** What a screen that works figures out is given; without a case there is nothing to take over into. */
export interface ShopProps {
  readonly knowledge: Knowledge;
  readonly open: OpenCase | undefined;
  readonly settings: Settings;
  readonly onSettings: (change: Partial<Settings>) => void;
}

interface FrameProps {
  readonly title: string;
  readonly body: ComponentType<ShopProps>;
}

/** A screen that stands alone, or beside the case that the address names. */
export function ShopFrame(props: FrameProps) {
  const id = useSearchParams().get("case");
  return id === null ? <Alone {...props} /> : <OfCase key={id} id={id} {...props} />;
}

function Alone({ title, body }: FrameProps) {
  const knowledge = useKnowledge();
  const [settings, onSettings] = useSettings();
  return (
    <Sheet title={title}>
      {knowledge.is === "loading" && <p role="status">Getting the knowledge ...</p>}
      {knowledge.is === "failed" && (
        <p className="trouble" role="alert">
          The knowledge did not arrive: {knowledge.message} Load the page again.
        </p>
      )}
      {knowledge.is === "ready" && (
        <Body
          body={body}
          knowledge={knowledge.value}
          open={undefined}
          settings={settings}
          onSettings={onSettings}
        />
      )}
    </Sheet>
  );
}

function OfCase({ id, title, body }: FrameProps & { readonly id: string }) {
  const knowledge = useKnowledge();
  const [settings, onSettings] = useSettings();
  const open = useCase(id, settings.by);
  if (knowledge.is !== "ready" || open.status !== "ready")
    return <CaseNotReady id={id} open={open} knowledge={knowledge} />;
  const { vehicle, invented } = open.state;
  return (
    <Sheet title={title}>
      <p className="row no-print">
        <Link className="button" href={`/case?id=${encodeURIComponent(id)}`}>
          Back to the case
        </Link>
        <span>
          {vehicle === "" ? "A car" : vehicle}
          {invented && " (invented)"}
        </span>
      </p>
      {open.trouble !== undefined && (
        <p className="trouble" role="alert">
          {open.trouble}
        </p>
      )}
      <Body body={body} knowledge={knowledge.value} open={open} settings={settings} onSettings={onSettings} />
    </Sheet>
  );
}

function Body({ body: Inner, ...props }: ShopProps & { readonly body: ComponentType<ShopProps> }) {
  return <Inner {...props} />;
}

function Sheet({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <>
      <SiteHead />
      <main id="main" className="sheet list-sheet">
        <h1>{title}</h1>
        {children}
      </main>
    </>
  );
}
