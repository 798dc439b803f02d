"use client";
import Link from "next/link";
import { useSearchParams } from "next/navigation";
import type { ComponentType } from "react";
import { useKnowledge } from "../../knowledge/use-knowledge.ts";
import type { OpenCase } from "../../store/use-case.ts";
import { useSettings } from "../../store/use-settings.ts";
import { type Opened, OpenedCase } from "../case/opened-case.tsx";
import { TitledSheet } from "../titled-sheet.tsx";

/** What a screen that works figures out is given; without a case there is nothing to take over into. */
export type ShopProps = Omit<Opened, "open"> & { readonly open: OpenCase | undefined };

interface FrameProps {
  readonly title: string;
  readonly body: ComponentType<ShopProps>;
}

/** A screen that stands alone, or beside the case that the address names. */
export function ShopFrame(props: FrameProps) {
  const id = useSearchParams().get("case");
  return id === null ? <Alone {...props} /> : <OfCase key={id} id={id} {...props} />;
}

function Alone({ title, body: Body }: FrameProps) {
  const knowledge = useKnowledge();
  const [settings, onSettings] = useSettings();
  return (
    <TitledSheet title={title}>
      {knowledge.is === "loading" && <p role="status">Getting the knowledge ...</p>}
      {knowledge.is === "failed" && (
        <p className="trouble" role="alert">
          The knowledge did not arrive: {knowledge.message} Load the page again.
        </p>
      )}
      {knowledge.is === "ready" && (
        <Body
          knowledge={knowledge.value.knowledge}
          release={knowledge.value}
          open={undefined}
          settings={settings}
          onSettings={onSettings}
        />
      )}
    </TitledSheet>
  );
}

function OfCase({ id, title, body: Body }: FrameProps & { readonly id: string }) {
  return (
    <OpenedCase id={id}>
      {(opened) => (
        <TitledSheet title={title}>
          <p className="row no-print">
            <Link className="button" href={`/case?id=${encodeURIComponent(id)}`}>
              Back to the case
            </Link>
            <span>
              {opened.open.state.vehicle === "" ? "A car" : opened.open.state.vehicle}
              {opened.open.state.invented && " (invented)"}
            </span>
          </p>
          {opened.open.trouble !== undefined && (
            <p className="trouble" role="alert">
              {opened.open.trouble}
            </p>
          )}
          <Body {...opened} />
        </TitledSheet>
      )}
    </OpenedCase>
  );
}
