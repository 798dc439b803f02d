"use client";
import { CaseSheet } from "./case-sheet.tsx";
import { CaseOfAddress } from "./opened-case.tsx";

/** Opens the case that the address names. */
export function CaseScreen() {
  return <CaseOfAddress>{(opened) => <CaseSheet {...opened} />}</CaseOfAddress>;
}
