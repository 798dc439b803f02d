"use client";
import { useSearchParams } from "next/navigation";
import { OpenedCase } from "../case/opened-case.tsx";
import { NewCaseScreen } from "../cases/new-case-screen.tsx";
import { DeskSheet } from "./desk-sheet.tsx";

/** The desk of the case that the address names; without one, a call is taken and becomes a case. */
export function DeskScreen() {
  const id = useSearchParams().get("id");
  if (id === null) return <NewCaseScreen call />;
  return (
    <OpenedCase key={id} id={id}>
      {(opened) => <DeskSheet {...opened} />}
    </OpenedCase>
  );
}
