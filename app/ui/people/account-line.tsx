"use client";
import { useState } from "react";
import { readReply } from "../../sync/read-reply.ts";
import { ROLES, roleMay } from "../../text/role-words.ts";
import { Choice } from "../choice.tsx";
import { Fold } from "../fold.tsx";
import { Account } from "./account.ts";
import { FormField } from "./form-field.tsx";
import { newPasswordProblem, PasswordField } from "./password-field.tsx";
import { Failed } from "./failed.tsx";
import { PeopleForm } from "./people-form.tsx";
import { useRequest } from "./use-request.ts";

interface LineProps {
  readonly account: Account;
  /** The owner's own account. */
  readonly isOwn: boolean;
  readonly onChanged: (account: Account) => void;
  /** What is shown may be old. */
  readonly onStale: () => void;
}

/** One account; opened, what can be changed in it. */
export function AccountLine(props: LineProps) {
  const { account, isOwn } = props;
  return (
    <li className="account-line">
      <Fold
        title={
          <>
            {account.name}{" "}
            <span className="soft">
              {account.role}
              {isOwn && ", you"}
              {account.disabled && ", shut out"}
            </span>
          </>
        }
      >
        <ChangeAccount key={account.version} {...props} />
      </Fold>
    </li>
  );
}

function ChangeAccount({ account, isOwn, onChanged, onStale }: LineProps) {
  const [name, setName] = useState(account.name);
  const [role, setRole] = useState(account.role);
  const [password, setPassword] = useState("");
  const { busy, failed, fields, send, refuse } = useRequest();

  const change = async (body: Readonly<Record<string, unknown>>) => {
    const path = `/api/v1/accounts/${encodeURIComponent(account.id)}`;
    const reply = await send({ method: "PATCH", path, body, ifMatch: `"${account.version}"` });
    const changed = readReply(reply, Account);
    if (changed !== undefined) onChanged(changed);
    else onStale();
  };
  const renew = () => {
    const problem = newPasswordProblem(password);
    if (problem === undefined) void change({ password });
    else refuse({ password: problem });
  };
  const same = name.trim() === account.name && role === account.role;

  return (
    <>
      <p className="small soft">{account.email}</p>
      <Failed words={failed} />
      <PeopleForm onSend={() => void change({ name: name.trim(), role })}>
        <FormField
          label="Name"
          name="name"
          autoComplete="off"
          most={80}
          value={name}
          problem={fields.name}
          onChange={setName}
        />
        <Choice id={`role-${account.id}`} label="Role" value={role} options={ROLES} onChange={setRole} />
        <p className="small soft">{roleMay(role)}</p>
        <button type="submit" disabled={busy || same || name.trim() === ""}>
          Save name and role
        </button>
      </PeopleForm>
      <PeopleForm onSend={() => renew()}>
        <PasswordField
          label={`New password for ${account.name}`}
          name="password"
          fresh
          value={password}
          problem={fields.password}
          onChange={setPassword}
        />
        <button type="submit" disabled={busy || password === ""}>
          Give the new password
        </button>
        <p className="small soft">Tell it to them; they change it. All their sessions end.</p>
      </PeopleForm>
      {!isOwn && (
        <p className="row">
          <button type="button" disabled={busy} onClick={() => void change({ disabled: !account.disabled })}>
            {account.disabled ? `Let ${account.name} in again` : `Shut ${account.name} out`}
          </button>
          <span className="small soft">
            {account.disabled
              ? "Their cases and entries are all there."
              : "All their sessions end at once; cases and entries stay."}
          </span>
        </p>
      )}
    </>
  );
}
