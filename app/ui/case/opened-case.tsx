"use client";
import Link from "next/link";
import { useSearchParams } from "next/navigation";
import type { ReactNode } from "react";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { OpenRelease } from "../../knowledge/open-release.ts";
import {
  type MissingRelease,
  ReleaseInUse,
  type ReleaseOfCase,
  useReleaseOfCase,
} from "../../knowledge/use-knowledge.ts";
import { useCaseIsOpen } from "../../offline/case-open.ts";
import { type OpenCase, useCase } from "../../store/use-case.ts";
import { type Settings, useSettings } from "../../store/use-settings.ts";
import { SiteHead } from "../site-head.tsx";
import { ChangeRelease } from "./change-release.tsx";

/** A case that is open, with what every screen of it works with. */
export interface Opened {
  readonly knowledge: Knowledge;
  /** Which knowledge that is. */
  readonly release: OpenRelease;
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

/** A case by its id, with the knowledge that it is weighed with; until both are there, what hinders it, in words. */
export function OpenedCase({ id, children }: CaseProps & { readonly id: string }) {
  useCaseIsOpen();
  const [settings, onSettings] = useSettings();
  const open = useCase(id, settings.by);
  const release = useReleaseOfCase(open.status === "ready" ? open.state : undefined);
  if (release.is === "ready" && open.status === "ready") {
    const { value } = release;
    // Another release is another screen: nothing that was worked out with one is shown beside the other.
    return (
      <ReleaseInUse key={value.sha256} value={value}>
        {children({ knowledge: value.knowledge, release: value, open, settings, onSettings })}
      </ReleaseInUse>
    );
  }
  return <CaseNotReady id={id} open={open} release={release} />;
}

/** What stands in place of a case that is not there (yet), in words. */
function CaseNotReady({
  id,
  open,
  release,
}: {
  readonly id: string;
  readonly open: OpenCase;
  readonly release: ReleaseOfCase;
}) {
  return (
    <>
      <SiteHead />
      <main id="main" className="sheet">
        {id === "" ? (
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
        ) : release.is === "missing" ? (
          <NoRelease missing={release} open={open} />
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

/** The knowledge of the case cannot be had: nothing is weighed until somebody says with what. */
function NoRelease({ missing, open }: { readonly missing: MissingRelease; readonly open: OpenCase }) {
  const { version, reason, newest } = missing;
  const { vehicle } = open.state;
  return (
    <Trouble
      title={`Knowledge ${version} is not here`}
      text={`${vehicle === "" ? "This case" : `The case of ${vehicle}`} is weighed with knowledge ${version}. ${
        reason === undefined
          ? "Neither this device nor the server has it."
          : `This device does not keep it, and the server did not give it: ${reason}`
      } Everything entered is there and stays.`}
      retry
    >
      {newest !== undefined && (
        <>
          <p>It can be weighed with {newest.version} from here on; the ranking may differ from before.</p>
          <p>
            <ChangeRelease newest={newest} append={open.append} />
          </p>
        </>
      )}
    </Trouble>
  );
}

function Trouble({
  title,
  text,
  retry = false,
  children,
}: {
  readonly title: string;
  readonly text: string;
  readonly retry?: boolean;
  readonly children?: ReactNode;
}) {
  return (
    <>
      <h1>{title}</h1>
      <p>{text}</p>
      {children}
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
