import { isAPIError } from 'better-auth/api';
import { note } from '@/lib/observe';
import { countAttempt, forgetAttempts, secondsToWait, type Limit } from '@/lib/store/accounts';
import { auth } from './auth';
import { signInNameOf } from './sign-in-name';

/** Of one account; whoever knows the password is let in again after it. */
const BY_NAME: Limit = { points: 5, seconds: 15 * 60 };
/** Of one address, over all names that it tries. */
const BY_ADDRESS: Limit = { points: 50, seconds: 15 * 60 };

export type SignInAnswer =
  | { kind: 'in'; cookies: string[] }
  /** The password is right; the second factor is asked for next. */
  | { kind: 'code'; cookies: string[] }
  | { kind: 'refused' }
  | { kind: 'wait'; seconds: number };

/**
 * Signs in by name and password. Says no more of a refusal than that it is one: not whether the name exists.
 * @param headers of the request: where it comes from is counted, and the browser is kept with the session.
 */
export async function signIn(name: string, password: string, headers: Headers): Promise<SignInAnswer> {
  const signInName = signInNameOf(name);
  const address = addressOf(headers);
  const wait = Math.max(
    await secondsToWait('name', BY_NAME, signInName),
    await secondsToWait('address', BY_ADDRESS, address),
  );
  if (wait > 0) return waits(wait);
  const response = await answered(
    auth().api.signInUsername({ body: { username: signInName, password }, headers, asResponse: true }),
  );
  if (response?.ok !== true) {
    await countAttempt('name', BY_NAME, signInName);
    await countAttempt('address', BY_ADDRESS, address);
    note.signInRefused('wrong');
    return { kind: 'refused' };
  }
  await forgetAttempts('name', BY_NAME, signInName);
  const body: unknown = await response.json();
  const second = typeof body === 'object' && body !== null && 'twoFactorRedirect' in body;
  return { kind: second ? 'code' : 'in', cookies: response.headers.getSetCookie() };
}

/** Of one address: a code has six digits, and the library locks an account after a few wrong ones. */
const BY_CODE: Limit = { points: 10, seconds: 15 * 60 };

/** The second step: a code of the authenticator, or one of the spare codes. */
export async function confirmCode(code: string, headers: Headers): Promise<SignInAnswer> {
  const address = addressOf(headers);
  const wait = await secondsToWait('code', BY_CODE, address);
  if (wait > 0) return waits(wait);
  const given = code.replaceAll(/\s/g, '');
  const api = auth().api;
  const response = await answered(
    /^\d{6}$/.test(given)
      ? api.verifyTOTP({ body: { code: given }, headers, asResponse: true })
      : api.verifyBackupCode({ body: { code: given }, headers, asResponse: true }),
  );
  if (response?.ok !== true) {
    await countAttempt('code', BY_CODE, address);
    note.signInRefused('wrong code');
    return { kind: 'refused' };
  }
  return { kind: 'in', cookies: response.headers.getSetCookie() };
}

function waits(seconds: number): SignInAnswer {
  note.signInRefused('too many attempts');
  return { kind: 'wait', seconds };
}

/** Ends the session of a request; the cookies that take it from the browser. */
export async function signOut(headers: Headers): Promise<string[]> {
  const response = await answered(auth().api.signOut({ headers, asResponse: true }));
  return response?.headers.getSetCookie() ?? [];
}

/** Refusals of the library come as errors or as answers, by its mood. */
async function answered(response: Promise<Response>): Promise<Response | null> {
  try {
    return await response;
  } catch (error) {
    if (isAPIError(error)) return null;
    throw error;
  }
}

/** The nearest address that a proxy, or the server itself, wrote down. */
function addressOf(headers: Headers): string {
  return headers.get('x-forwarded-for')?.split(',').at(-1)?.trim() ?? '';
}
