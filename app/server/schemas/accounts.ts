import { z } from "zod";
import { ROLES } from "../principal.ts";
import { lineOfText, Moment } from "./common.ts";

/**
 * Shortest and longest password, in code points.
 *
 * Source  NIST SP 800-63B: length counts, no rules of composition, at least 64 characters allowed.
 */
export const PASSWORD_LENGTH = { least: 12, most: 200 } as const;

const lengthOf = (text: string): number => [...text.normalize("NFKC")].length;

/** A password that is being chosen. */
export const NewPassword = z
  .string()
  .max(PASSWORD_LENGTH.most * 4)
  .refine(
    (text) => lengthOf(text) >= PASSWORD_LENGTH.least,
    `use ${PASSWORD_LENGTH.least} characters or more`,
  )
  .refine(
    (text) => lengthOf(text) <= PASSWORD_LENGTH.most,
    `use ${PASSWORD_LENGTH.most} characters or fewer`,
  );

/** A password that is being tried: of any form, as a wrong one says nothing about its form. */
export const TriedPassword = z.string().max(PASSWORD_LENGTH.most * 4);

export const Email = z.email("give an e-mail address such as ana@workshop.example").max(254).toLowerCase();
export const PersonName = lineOfText(80).trim().min(1, "give a name");
export const RoleName = z.enum(ROLES);

export const Person = z
  .strictObject({ id: z.string(), name: z.string(), role: RoleName })
  .meta({ id: "Person" });

export const Me = z.strictObject({
  person: Person.nullable().describe("Who is signed in; null: nobody."),
  local: z.boolean().describe("At this very machine, and nobody has made an account: everything is allowed."),
  ownerNeeded: z.boolean().describe("No account was made yet, so that the first one can be."),
  history: z
    .string()
    .describe(
      "Which database it is, to those who see cases. Another one than before: an older copy was put in place, and devices send again what they have.",
    )
    .exactOptional(),
});

export const FirstAccount = z.strictObject({
  name: PersonName,
  email: Email,
  password: NewPassword,
  setUpCode: z
    .string()
    .max(200)
    .describe("As printed on the server's console; not needed at the machine itself.")
    .exactOptional(),
});

export const SignIn = z.strictObject({ email: z.string().max(254), password: TriedPassword });

export const ChangePassword = z.strictObject({ current: TriedPassword, next: NewPassword });

export const AccountParams = z.strictObject({ id: z.string().regex(/^[A-Za-z0-9_-]{1,64}$/) });

export const Account = z
  .strictObject({
    id: z.string(),
    name: z.string(),
    email: z.string(),
    role: RoleName,
    disabled: z.boolean(),
    madeAt: Moment,
    version: z.number().int().positive(),
  })
  .meta({ id: "Account" });

export const AccountList = z.strictObject({ accounts: z.array(Account) });

export const PeopleList = z.strictObject({ people: z.array(Person) });

export const NewAccount = z.strictObject({
  name: PersonName,
  email: Email,
  role: RoleName,
  password: NewPassword.describe("Told to the person, who changes it."),
});

export const AccountChange = z
  .strictObject({
    name: PersonName.exactOptional(),
    role: RoleName.exactOptional(),
    disabled: z.boolean().exactOptional(),
    password: NewPassword.exactOptional(),
  })
  .refine((change) => Object.keys(change).length > 0, "name at least one field to change");
