import { z } from "zod";

/** An account as the owner sees it. */
export const Account = z.object({
  id: z.string(),
  name: z.string(),
  email: z.string(),
  role: z.enum(["owner", "advisor", "technician", "instructor", "trainee"]),
  disabled: z.boolean(),
  version: z.number().int(),
});
export type Account = z.infer<typeof Account>;

export const AccountsReply = z.object({ accounts: z.array(Account) });
