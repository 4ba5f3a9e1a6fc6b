import { betterAuth } from 'better-auth';
import { prismaAdapter } from 'better-auth/adapters/prisma';
import { APIError } from 'better-auth/api';
import { nextCookies } from 'better-auth/next-js';
import { twoFactor } from 'better-auth/plugins';
import { z } from 'zod';
import { now } from '@/lib/clock';
import { authSecret, config } from '@/lib/config';
import { db } from '@/lib/db/client';
import { drawBackupCodes, keptAsDigests } from './backup-codes';
import { hashPassword, verifyPassword } from './password-hash';
import { PASSWORD_MAX, PASSWORD_MIN } from './rules/passwords';
import { isOutdated } from './temporary-password';

export const SESSION_HOURS = 12;
/** Ten wrong codes in a row: 240 tries a day for somebody who knows the password, of a million codes of which three fit. */
const LOCK = { enabled: true, maxFailedAttempts: 10, durationSeconds: 3600 };
const BACKUP_CODES = { customBackupCodesGenerate: drawBackupCodes, storeBackupCodes: keptAsDigests };
/** The name that an authenticator app shows beside the code. */
const ISSUER = 'Workshop';

/**
 * Staff sign-in. Built at first use, because importing a page must not need a database or a secret.
 *
 * None of its addresses is routed: pages call it from server actions, which check the caller's origin, and count
 * attempts themselves (limit-attempts.ts), since the library's own limiter sits in the router that is not used.
 */
export function auth(): Auth {
  built ??= build();
  return built;
}

export type Auth = ReturnType<typeof build>;
let built: Auth | undefined;

function build() {
  return betterAuth({
    appName: ISSUER,
    baseURL: config.appUrl,
    secret: authSecret(),
    telemetry: { enabled: false },
    // Below this level the library writes one line for every mistyped password.
    logger: { level: 'error' },
    database: prismaAdapter(db, { provider: 'postgresql', transaction: true }),
    emailAndPassword: {
      enabled: true,
      disableSignUp: true,
      minPasswordLength: PASSWORD_MIN,
      maxPasswordLength: PASSWORD_MAX,
      password: { hash: hashPassword, verify: verifyPassword },
    },
    user: {
      additionalFields: {
        role: { type: 'string', required: true, input: false, defaultValue: 'front' },
        initials: { type: 'string', required: true, input: false, defaultValue: '' },
        isActive: { type: 'boolean', required: true, input: false, defaultValue: true },
        hasTemporaryPassword: { type: 'boolean', required: true, input: false, defaultValue: false },
        temporaryPasswordUntil: { type: 'date', required: false, input: false },
      },
    },
    // Twelve hours from signing in, whatever happens between: one working day. Pages that only read cannot renew the
    // cookie, so a sliding end would differ between browser and database.
    session: {
      expiresIn: SESSION_HOURS * 3600,
      disableSessionRefresh: true,
      cookieCache: { enabled: false },
    },
    rateLimit: { enabled: false },
    advanced: {
      // A session is read with its person by one statement.
      database: { joins: true },
      // The library's own prefix is __Secure-; __Host- also keeps neighbours under the same domain from setting it.
      cookiePrefix: isEncrypted() ? '__Host-workshop' : 'workshop',
      useSecureCookies: false,
      defaultCookieAttributes: { secure: isEncrypted() },
      // The list of sessions tells them apart by device and time; network addresses are not kept.
      ipAddress: { disableIpTracking: true },
    },
    databaseHooks: {
      session: {
        create: {
          // Read through the library's own adapter: it may be inside a transaction here.
          before: async (session, context) => {
            const adapter = context?.context.internalAdapter;
            const { data: user } = account.safeParse(await adapter?.findUserById(session.userId));
            if (!user?.isActive) throw refused();
            if (context?.path === '/sign-in/email' && isOutdated(user, now())) throw refused();
          },
        },
      },
    },
    // nextCookies has to be the last plugin.
    plugins: [
      twoFactor({ issuer: ISSUER, accountLockout: LOCK, backupCodeOptions: BACKUP_CODES }),
      nextCookies(),
    ],
  });
}

const account = z.object({
  isActive: z.boolean(),
  hasTemporaryPassword: z.boolean(),
  temporaryPasswordUntil: z.date().nullable(),
});

function isEncrypted(): boolean {
  return config.appUrl.startsWith('https:');
}

// A deactivated account or an outdated temporary password gets the same answer as a wrong password.
function refused(): APIError {
  return new APIError('UNAUTHORIZED', { code: 'INVALID_EMAIL_OR_PASSWORD' });
}
