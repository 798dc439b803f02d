import type { Kysely } from "kysely";
import type { StoreKind } from "../tables.ts";
import { columnTypes } from "./column-types.ts";

/** People, their passwords and sessions: the columns that better-auth 1.7 asks for, with role and disabled. */
export async function makeAccounts(db: Kysely<unknown>, kind: StoreKind): Promise<void> {
  const { text, integer, long, moment, flag } = columnTypes(kind);
  await db.schema
    .createTable("user")
    .addColumn("id", text, (c) => c.primaryKey())
    .addColumn("name", text, (c) => c.notNull())
    .addColumn("email", text, (c) => c.notNull().unique())
    .addColumn("emailVerified", flag, (c) => c.notNull())
    .addColumn("image", text)
    .addColumn("role", text, (c) => c.notNull())
    .addColumn("disabled", flag, (c) => c.notNull())
    .addColumn("createdAt", moment, (c) => c.notNull())
    .addColumn("updatedAt", moment, (c) => c.notNull())
    .execute();
  await db.schema
    .createTable("session")
    .addColumn("id", text, (c) => c.primaryKey())
    .addColumn("userId", text, (c) => c.notNull().references("user.id").onDelete("cascade"))
    .addColumn("token", text, (c) => c.notNull().unique())
    .addColumn("expiresAt", moment, (c) => c.notNull())
    .addColumn("ipAddress", text)
    .addColumn("userAgent", text)
    .addColumn("createdAt", moment, (c) => c.notNull())
    .addColumn("updatedAt", moment, (c) => c.notNull())
    .execute();
  await db.schema.createIndex("session_userId").on("session").column("userId").execute();
  await db.schema
    .createTable("account")
    .addColumn("id", text, (c) => c.primaryKey())
    .addColumn("userId", text, (c) => c.notNull().references("user.id").onDelete("cascade"))
    .addColumn("accountId", text, (c) => c.notNull())
    .addColumn("providerId", text, (c) => c.notNull())
    .addColumn("accessToken", text)
    .addColumn("refreshToken", text)
    .addColumn("idToken", text)
    .addColumn("accessTokenExpiresAt", moment)
    .addColumn("refreshTokenExpiresAt", moment)
    .addColumn("scope", text)
    .addColumn("password", text)
    .addColumn("createdAt", moment, (c) => c.notNull())
    .addColumn("updatedAt", moment, (c) => c.notNull())
    .execute();
  await db.schema.createIndex("account_userId").on("account").column("userId").execute();
  await db.schema
    .createTable("verification")
    .addColumn("id", text, (c) => c.primaryKey())
    .addColumn("identifier", text, (c) => c.notNull())
    .addColumn("value", text, (c) => c.notNull())
    .addColumn("expiresAt", moment, (c) => c.notNull())
    .addColumn("createdAt", moment, (c) => c.notNull())
    .addColumn("updatedAt", moment, (c) => c.notNull())
    .execute();
  await db.schema.createIndex("verification_identifier").on("verification").column("identifier").execute();
  await db.schema
    .createTable("rateLimit")
    .addColumn("id", text, (c) => c.primaryKey())
    .addColumn("key", text, (c) => c.notNull().unique())
    .addColumn("count", integer, (c) => c.notNull())
    .addColumn("lastRequest", long, (c) => c.notNull())
    .execute();
}
