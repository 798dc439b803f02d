import { route } from "../route-description.ts";
import {
  Account,
  AccountChange,
  AccountList,
  AccountParams,
  ChangePassword,
  FirstAccount,
  Me,
  NewAccount,
  PeopleList,
  Person,
  SignIn,
} from "../schemas/accounts.ts";

const COOKIE = { "set-cookie": "The session, kept from scripts." };
const VERSION = { etag: "The account's version, for If-Match." };

export const readMe = route({
  method: "GET",
  path: "/api/v1/me",
  action: "see-status",
  summary: "Who is asking",
  gives: { status: 200, what: "Who is signed in, and what is still to be set up", body: Me },
});

export const makeFirstAccount = route({
  method: "POST",
  path: "/api/v1/first-account",
  action: "make-first-account",
  summary: "Make the owner's account and sign in",
  body: FirstAccount,
  gives: { status: 201, what: "The owner, signed in", body: Person, headers: COOKIE },
  problems: ["owner-exists", "wrong-set-up-code", "too-many-tries"],
});

export const signIn = route({
  method: "POST",
  path: "/api/v1/session",
  action: "sign-in",
  summary: "Sign in",
  body: SignIn,
  gives: { status: 200, what: "Signed in", body: Person, headers: COOKIE },
  problems: ["wrong-sign-in", "too-many-tries"],
});

export const signOut = route({
  method: "DELETE",
  path: "/api/v1/session",
  action: "sign-out",
  summary: "Sign out here",
  gives: { status: 204, what: "Signed out, or nobody was signed in" },
});

export const signOutEverywhere = route({
  method: "DELETE",
  path: "/api/v1/sessions",
  action: "keep-own-account",
  summary: "Sign out on every device",
  gives: { status: 204, what: "All sessions of the account are over" },
});

export const changePassword = route({
  method: "PUT",
  path: "/api/v1/password",
  action: "keep-own-account",
  summary: "Change the own password; other sessions end",
  body: ChangePassword,
  gives: { status: 204, what: "Changed", headers: COOKIE },
  problems: ["wrong-sign-in", "too-many-tries"],
});

export const listAccounts = route({
  method: "GET",
  path: "/api/v1/accounts",
  action: "keep-accounts",
  summary: "Every account",
  gives: { status: 200, what: "The accounts, by name", body: AccountList },
});

export const listPeople = route({
  method: "GET",
  path: "/api/v1/people",
  action: "see-people",
  summary: "Who a case can be given to",
  gives: { status: 200, what: "Everybody who can sign in, by name", body: PeopleList },
});

export const makeAccount = route({
  method: "POST",
  path: "/api/v1/accounts",
  action: "keep-accounts",
  summary: "Make an account",
  body: NewAccount,
  gives: { status: 201, what: "The account", body: Account, headers: VERSION },
  problems: ["email-taken"],
});

export const changeAccount = route({
  method: "PATCH",
  path: "/api/v1/accounts/{id}",
  action: "keep-accounts",
  summary: "Change an account; disabling it or giving it a new password ends its sessions",
  params: AccountParams,
  missing: "no-such-account",
  body: AccountChange,
  ifMatch: true,
  gives: { status: 200, what: "The account as it is now", body: Account, headers: VERSION },
  problems: ["last-owner"],
});
