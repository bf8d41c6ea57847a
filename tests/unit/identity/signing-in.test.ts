import { createHmac } from 'node:crypto';
import { createOTP } from '@better-auth/utils/otp';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import {
  changePassword,
  confirmCode,
  confirmSecondFactor,
  hashPassword,
  offerSecondFactor,
  signIn,
  signOut,
  viewerOf,
} from '@/lib/identity';
import { savePeople } from '@/lib/store';
import { database } from '@/lib/store/connection/database';
import {
  endSessions,
  invite,
  makeFirstManager,
  openInvitation,
  takeUpInvitation,
} from '@/lib/store/accounts';
import { freshStore } from '@/tests/unit/store/fresh-store';
import { BY_COMMAND } from '@/tests/unit/store/invented-readings';

const store = freshStore();
vi.stubEnv('REHANG_SECRET', 'a secret of the tests, long enough');

const PASSWORD = 'four gauges hang level';
const MANAGER = { shopName: 'A shop', timeZone: 'UTC', code: 'GRE', name: 'Greta' };
const browser = (cookies: string[] = []) =>
  new Headers({ cookie: cookies.map((one) => one.split(';')[0]).join('; '), 'user-agent': 'A browser' });

/** Made once: a hash is meant to take long. */
const passwordHash = await hashPassword(PASSWORD);

beforeEach(() => makeFirstManager({ ...MANAGER, signInName: 'greta', passwordHash }));

async function signedIn(): Promise<string[]> {
  const answer = await signIn('greta', PASSWORD, browser());
  if (answer.kind !== 'in') throw new Error(`The sign-in was answered with ${answer.kind}.`);
  return answer.cookies;
}

describe('signing in', () => {
  it('makes a session that says who somebody is, until it is ended', async () => {
    const cookies = await signedIn();
    expect(cookies.join()).toMatch(/HttpOnly/);
    expect(cookies.join()).toMatch(/SameSite=Lax/);
    expect(await viewerOf(browser(cookies))).toMatchObject({
      code: 'GRE',
      role: 'manager',
      secondFactor: false,
    });
    await signOut(browser(cookies));
    expect(await viewerOf(browser(cookies))).toBeNull();
  });

  it('is refused for a wrong password and for an unknown name alike', async () => {
    expect(await signIn('greta', 'not the password', browser())).toEqual({ kind: 'refused' });
    expect(await signIn('nobody', PASSWORD, browser())).toEqual({ kind: 'refused' });
    expect(await viewerOf(browser(['rehang.session_token=made.up']))).toBeNull();
  });

  it('is one for the cookie as it was signed, and no longer than it was made for', async () => {
    const cookies = await signedIn();
    const [token = '', signature = ''] = decodeURIComponent(
      /rehang\.session_token=([^;]*)/.exec(cookies.join())?.[1] ?? '',
    ).split('.');
    const cookie = (value: string) => browser([`rehang.session_token=${encodeURIComponent(value)}`]);
    expect(await viewerOf(cookie(`${token}.${signature}`))).not.toBeNull();
    const other = createHmac('sha256', 'another secret').update(token).digest('base64');
    for (const forged of [`${token}.${other}`, `${token}.`, `x${token}.${signature}`, token, '%', '.'])
      expect(await viewerOf(cookie(forged)), forged).toBeNull();
    await database().session.updateMany({ data: { expiresAt: new Date(Date.now() - 1) } });
    expect(await viewerOf(cookie(`${token}.${signature}`))).toBeNull();
  });

  it('must wait after five failures, whatever the address says, and even with the right password', async () => {
    for (let attempt = 0; attempt < 5; attempt++)
      await signIn('Greta', `wrong ${attempt}`, new Headers({ 'x-forwarded-for': `192.0.2.${attempt}` }));
    expect(await signIn('greta', PASSWORD, browser())).toMatchObject({ kind: 'wait' });
  });

  it('is no longer good for somebody who was made inactive, nor after the manager ended the session', async () => {
    const cookies = await signedIn();
    await endSessions(store.shop, 'GRE', {}, { person: 'GRE', via: 'page' });
    expect(await viewerOf(browser(cookies))).toBeNull();
    const again = await signedIn();
    await savePeople(
      store.shop,
      [
        { code: 'GRE', name: 'Greta', role: 'manager', active: false },
        { code: 'TWO', name: 'Two', role: 'manager', active: true },
      ],
      BY_COMMAND,
    );
    expect(await viewerOf(browser(again))).toBeNull();
  });

  it('ends the other sessions when the password is changed, and wants the present one for it', async () => {
    const [one, other] = [await signedIn(), await signedIn()];
    expect(await changePassword('not this', 'another long sentence', browser(one))).toBeNull();
    const kept = await changePassword(PASSWORD, 'another long sentence', browser(one));
    expect(await viewerOf(browser(kept ?? []))).not.toBeNull();
    expect(await viewerOf(browser(other))).toBeNull();
  });
});

describe('a second factor', () => {
  it('is asked for once it is confirmed, and a spare code lets in once', async () => {
    const cookies = await signedIn();
    const offer = await offerSecondFactor(PASSWORD, browser(cookies));
    if (offer === null) throw new Error('No second factor was offered.');
    const secret = new TextDecoder().decode(Buffer.from(base32(offer.secret)));
    const code = await createOTP(secret).totp();
    expect(await confirmSecondFactor(code, browser(cookies))).not.toBeNull();

    const half = await signIn('greta', PASSWORD, browser());
    if (half.kind !== 'code') throw new Error(`The sign-in was answered with ${half.kind}.`);
    expect(await viewerOf(browser(half.cookies))).toBeNull();
    expect(await confirmCode('000000', browser(half.cookies))).toEqual({ kind: 'refused' });
    const [spare = ''] = offer.spareCodes;
    const whole = await confirmCode(spare, browser(half.cookies));
    expect(whole.kind === 'in' && (await viewerOf(browser(whole.cookies)))).toMatchObject({
      secondFactor: true,
    });

    const next = await signIn('greta', PASSWORD, browser());
    expect(next.kind === 'code' && (await confirmCode(spare, browser(next.cookies)))).toEqual({
      kind: 'refused',
    });
  });
});

describe('an invitation', () => {
  it('lets one person in once, by the link alone, for three days', async () => {
    await savePeople(
      store.shop,
      [{ code: 'FEL', name: 'Runa', role: 'technician', active: true }],
      BY_COMMAND,
    );
    const now = Date.now();
    const earlier = await invite(store.shop, 'FEL', { person: 'GRE', via: 'page' }, now);
    const token = await invite(store.shop, 'FEL', { person: 'GRE', via: 'page' }, now);
    expect(await openInvitation(earlier, now)).toBeNull();
    expect(await openInvitation(token, now)).toMatchObject({ code: 'FEL', signInName: null });
    expect(await openInvitation(token, now + 4 * 24 * 3600 * 1000)).toBeNull();
    expect(await takeUpInvitation(token, { signInName: 'runa', passwordHash }, now)).toBe(true);
    expect(await takeUpInvitation(token, { signInName: 'again', passwordHash }, now)).toBe(false);
    expect(await signIn('RUNA', PASSWORD, browser())).toMatchObject({ kind: 'in' });
  });

  it('cannot take another’s sign-in name', async () => {
    await savePeople(
      store.shop,
      [{ code: 'FEL', name: 'Runa', role: 'technician', active: true }],
      BY_COMMAND,
    );
    const token = await invite(store.shop, 'FEL', { person: 'GRE', via: 'page' });
    await expect(takeUpInvitation(token, { signInName: 'greta', passwordHash })).rejects.toThrow(
      /greta is taken/,
    );
    expect(await openInvitation(token)).not.toBeNull();
  });
});

it('the first manager is made once only', async () => {
  const second = { ...MANAGER, code: 'EVE', name: 'Eve', signInName: 'eve', passwordHash };
  expect(await makeFirstManager(second)).toBe(false);
  expect(await signIn('eve', PASSWORD, browser())).toEqual({ kind: 'refused' });
});

/** RFC 4648. */
function base32(text: string): number[] {
  const bits = Array.from(text.replace(/=+$/, ''))
    .map((letter) => 'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567'.indexOf(letter).toString(2).padStart(5, '0'))
    .join('');
  return (bits.match(/.{8}/g) ?? []).map((byte) => parseInt(byte, 2));
}
