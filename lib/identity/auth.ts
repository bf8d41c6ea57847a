import { betterAuth } from 'better-auth';
import { twoFactor, username } from 'better-auth/plugins';
import { signInTables } from '@/lib/store/accounts';
import { origin } from './origin';
import { LONGEST_PASSWORD, SHORTEST_PASSWORD } from './password';
import { secret } from './secret';
import { isSignInName, LONGEST_NAME, SHORTEST_NAME } from './sign-in-name';

/** A session ends so long after it began, s: a working day. */
const SESSION_SECONDS = 12 * 3600;

function makeAuth(adapter: ReturnType<typeof signInTables>['adapter']) {
  return betterAuth({
    appName: 'Rehang',
    baseURL: origin(),
    secret: secret(),
    database: adapter,
    telemetry: { enabled: false },
    // Accounts come by invitation only; attempts are counted by name and address in lib/identity/sign-in.
    emailAndPassword: {
      enabled: true,
      disableSignUp: true,
      minPasswordLength: SHORTEST_PASSWORD,
      maxPasswordLength: LONGEST_PASSWORD,
    },
    rateLimit: { enabled: false },
    session: { expiresIn: SESSION_SECONDS, disableSessionRefresh: true, cookieCache: { enabled: false } },
    advanced: {
      cookiePrefix: 'rehang',
      useSecureCookies: origin().startsWith('https:'),
      defaultCookieAttributes: { httpOnly: true, sameSite: 'lax', path: '/' },
    },
    plugins: [
      username({
        minUsernameLength: SHORTEST_NAME,
        maxUsernameLength: LONGEST_NAME,
        usernameValidator: isSignInName,
      }),
      twoFactor({ issuer: 'Rehang', skipVerificationOnEnable: false }),
    ],
    logger: { disabled: true },
  });
}

type Auth = ReturnType<typeof makeAuth>;
const held = globalThis as typeof globalThis & { rehangAuth?: { address: string; auth: Auth } | undefined };

/** The sign-in library on the database of the time; made at its first use, so that a build opens no database. */
export function auth(): Auth {
  const { address, adapter } = signInTables();
  if (held.rehangAuth?.address === address) return held.rehangAuth.auth;
  const made = makeAuth(adapter);
  held.rehangAuth = { address, auth: made };
  return made;
}
