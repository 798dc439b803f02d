/** Codes of every expected failure of the store; the text beside each is what a caller may count on. */
export type StoreProblemCode =
  | "no-such-case" // no case of that id, and no opening among the entries
  | "case-removed" // the case was removed for good; nothing can be added
  | "case-full" // the case would grow beyond what a case file can hold
  | "photos-full" // the case has as many photos as it may have, or the shop as many as an archive can hold
  | "entry-differs" // another entry is kept under that id
  | "bad-entry" // an entry of another case, or one that nests too deep
  | "no-such-account" // no account of that id
  | "owner-exists" // the first account was made already
  | "email-taken" // another account has that e-mail address
  | "last-owner" // nobody would be left who can change accounts
  | "changed-meanwhile" // it is no longer at the version that the change was made on
  | "no-such-exercise" // no exercise of that id, or it was removed
  | "no-such-attempt" // no attempt of that id that the sender may add to
  | "attempt-over" // the attempt has ended, or holds as much as one can
  | "bad-archive" // an archive that is damaged, too large or of a newer form; nothing of it was kept
  | "not-empty" // the shop that an archive should go into has cases of its own
  | "bad-cursor" // a place in a list that this store did not give
  | "disk-full" // no room left; nothing of the write was kept
  | "read-only" // the database may be read but not written
  | "cannot-open" // a path or address that leads to no database
  | "not-a-database" // a file that is none, or is damaged
  | "newer-database" // written by a newer version of the program
  | "unreachable" // the database server does not answer
  | "busy"; // another program holds the database for too long

/**
 * An expected failure of the store: a code for programs, a sentence for people that says how to mend it.
 *
 * The message may name the database's path: show it to whoever runs the server, not to whoever asks it.
 */
export class StoreProblem extends Error {
  readonly code: StoreProblemCode;
  readonly details: Readonly<Record<string, unknown>>;

  constructor(
    code: StoreProblemCode,
    message: string,
    details: Readonly<Record<string, unknown>> = {},
    options?: ErrorOptions,
  ) {
    super(message, options);
    this.name = "StoreProblem";
    this.code = code;
    this.details = details;
  }
}
