import { randomBytes, randomUUID } from "node:crypto";
import { betterAuth } from "better-auth";
import { settingOnce, type Store } from "../../lib/store/index.ts";
import type { Config } from "./config.ts";
import { hashPassword, verifyPassword } from "./password.ts";
import { PASSWORD_LENGTH } from "./schemas/accounts.ts";

const DAY = 86_400;
/** A session that is not used for this long is over. */
const SESSION_SECONDS = 14 * DAY;

/** The secret that signs cookies: given, or made once for the whole workshop, whichever instance comes first. */
function secretOf(store: Store, config: Config): Promise<string> | string {
  return config.secret ?? settingOnce(store, "secret", randomBytes(32).toString("base64url"));
}

/**
 * Sign-in, sessions and cookies. Its own routes are not reachable: ours call its functions, count attempts and
 * give every failure the same words.
 */
export async function makeAuth(store: Store, config: Config) {
  const { origin } = config;
  return betterAuth({
    appName: "Cornerwise",
    baseURL: origin ?? "http://localhost",
    secret: await secretOf(store, config),
    database: {
      db: store.db,
      type: store.kind === "postgres" ? "postgres" : "sqlite",
      transaction: true,
    },
    telemetry: { enabled: false },
    logger: { disabled: true },
    rateLimit: { enabled: false },
    emailAndPassword: {
      enabled: true,
      disableSignUp: true,
      minPasswordLength: PASSWORD_LENGTH.least,
      // Counted in other units than ours: the longest of ours must fit.
      maxPasswordLength: PASSWORD_LENGTH.most * 4,
      password: {
        hash: hashPassword,
        verify: ({ hash, password }) => verifyPassword(hash, password),
      },
    },
    session: { expiresIn: SESSION_SECONDS, updateAge: DAY, cookieCache: { enabled: false } },
    user: {
      additionalFields: {
        role: { type: "string", required: true, input: false },
        disabled: { type: "boolean", required: true, input: false },
      },
    },
    databaseHooks: {
      session: {
        create: {
          // Asked through the library: it may be inside a transaction, which holds the only connection.
          before: async ({ userId }, context) => {
            const user = await context?.context.internalAdapter.findUserById(userId);
            return user !== undefined && user !== null && !Reflect.get(user, "disabled");
          },
        },
      },
    },
    advanced: {
      cookiePrefix: "cornerwise",
      useSecureCookies: origin?.startsWith("https:") ?? false,
      defaultCookieAttributes: { httpOnly: true, sameSite: "strict", path: "/" },
      ipAddress: { disableIpTracking: true },
      // The tables are made and checked by our own migrations.
      database: { validateSchema: false, generateId: () => randomUUID() },
    },
  });
}

export type Auth = Awaited<ReturnType<typeof makeAuth>>;

/** Name of the session's cookie under every configuration. */
export const SESSION_COOKIE = "cornerwise.session_token";
