/** Roles in the order in which they are offered, with what each may do. */
export const ROLES = [
  { value: "technician", name: "technician", may: "works on every case" },
  { value: "advisor", name: "advisor", may: "works on every case" },
  { value: "instructor", name: "instructor", may: "works on own cases and those of trainees" },
  { value: "trainee", name: "trainee", may: "works on own cases only" },
  { value: "owner", name: "owner", may: "everything, accounts too" },
] as const;

export type RoleValue = (typeof ROLES)[number]["value"];

/** What a role may do, in words. */
export function roleMay(role: string): string {
  return ROLES.find((r) => r.value === role)?.may ?? "";
}
