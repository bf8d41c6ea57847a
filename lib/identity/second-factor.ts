import { isAPIError } from 'better-auth/api';
import { auth } from './auth';

export interface SecondFactorOffer {
  /** For an authenticator: what its picture holds. */
  uri: string;
  /** The same secret, to be typed. */
  secret: string;
  /** Each lets in once where the authenticator is lost. Shown this one time. */
  spareCodes: string[];
}

/** Begins a second factor; it holds once a first code is confirmed. Null where the password is wrong. */
export async function offerSecondFactor(
  password: string,
  headers: Headers,
): Promise<SecondFactorOffer | null> {
  try {
    const offered = await auth().api.enableTwoFactor({ body: { password }, headers });
    if (!('totpURI' in offered)) return null;
    const { totpURI, backupCodes } = offered;
    return {
      uri: totpURI,
      secret: new URL(totpURI).searchParams.get('secret') ?? '',
      spareCodes: backupCodes,
    };
  } catch (error) {
    if (isAPIError(error)) return null;
    throw error;
  }
}

/** @returns the new cookies of the session, or null where the code is wrong. */
export async function confirmSecondFactor(code: string, headers: Headers): Promise<string[] | null> {
  return cookiesOf(auth().api.verifyTOTP({ body: { code }, headers, asResponse: true }));
}

/** @returns the new cookies of the session, or null where the password is wrong. */
export async function dropSecondFactor(password: string, headers: Headers): Promise<string[] | null> {
  return cookiesOf(auth().api.disableTwoFactor({ body: { password }, headers, asResponse: true }));
}

/** Ends every other session. @returns the new cookies of this one, or null where the present password is wrong. */
export async function changePassword(
  present: string,
  next: string,
  headers: Headers,
): Promise<string[] | null> {
  const body = { currentPassword: present, newPassword: next, revokeOtherSessions: true };
  return cookiesOf(auth().api.changePassword({ body, headers, asResponse: true }));
}

async function cookiesOf(answer: Promise<Response>): Promise<string[] | null> {
  try {
    const response = await answer;
    return response.ok ? response.headers.getSetCookie() : null;
  } catch (error) {
    if (isAPIError(error)) return null;
    throw error;
  }
}
