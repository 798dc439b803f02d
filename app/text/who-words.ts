/** Who can make a check or answer a question. */
export const WHO_WORDS = {
  owner: "the owner can do it",
  driver: "the driver can do it",
  technician: "a technician",
} as const;
