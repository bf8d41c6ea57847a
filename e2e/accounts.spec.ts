import { createOTP } from '@better-auth/utils/otp';
import { expect, test, type Page } from '@playwright/test';
import { enterOtherShop } from './other-shop';
import { NOBODY } from './signed-in';

test.use({ storageState: NOBODY });

const PASSWORD = 'nine bars over the pit';

async function signIn(page: Page, name: string, password: string) {
  await page.goto('/sign-in');
  await page.getByLabel('Sign-in name').fill(name);
  await page.getByLabel('Password').fill(password);
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
}

test('a stranger is led to sign in, and then to where they wanted to go', async ({ page }) => {
  await page.goto('/gauges?from=here');
  await expect(page).toHaveURL(/\/sign-in\?to=/);
  await signIn(page, 'nobody', 'a wrong password');
  await expect(page.getByRole('status')).toContainText('The sign-in name or the password is not right.');
  await page.goto('/gauges?from=here');
  await page.getByRole('button', { name: /Sign in as the trainer/ }).click();
  await expect(page).toHaveURL(/\/gauges\?from=here$/);

  const cookie = (await page.context().cookies()).map(({ name, value }) => `${name}=${value}`).join('; ');
  await page.getByRole('button', { name: 'Sign out', exact: true }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Sign in');
  const ended = await page.request.get('/gauges', { headers: { cookie }, maxRedirects: 0 });
  expect(ended.headers().location).toMatch(/^\/sign-in/);
  await page.goto('/gauges');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Sign in');
});

test('a way back to another site is not taken', async ({ page }) => {
  await page.goto('/sign-in?to=//elsewhere.example/trap');
  await page.getByRole('button', { name: /Sign in as the trainer/ }).click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Thistledown');
});

test('the manager invites somebody, who signs in, sets up a second factor, and is signed out again', async ({
  browser,
  page,
}, { config }) => {
  await enterOtherShop(config, page.request, 'Inviting Quay');
  await page.goto('/settings/people');
  await page.getByLabel(/^Code, as it stands/).fill('NEW');
  await page.getByLabel(/^Name/).fill('Nola Newcome');
  await page.getByRole('button', { name: 'Keep it' }).click();
  await expect(page.getByRole('status')).toHaveText('NEW is added.');
  await page.getByRole('button', { name: 'Invite NEW' }).click();
  const link = /http\S+(\/invitation\/\S+)/.exec(await page.getByRole('status').innerText())?.[1] ?? '';

  const own = await browser.newContext({ storageState: NOBODY });
  const theirs = await own.newPage();
  await theirs.goto(link);
  await expect(theirs.getByRole('heading', { level: 1 })).toHaveText('Welcome to Inviting Quay');
  await theirs.getByLabel(/^Sign-in name/).fill('Nola');
  await theirs.getByLabel(/^Password/).fill('qwertyuiop12');
  await theirs.getByRole('button', { name: 'Take it up' }).click();
  await expect(theirs.getByRole('status')).toContainText('tried first everywhere');
  await theirs.getByLabel(/^Sign-in name/).fill('Nola');
  await theirs.getByLabel(/^Password/).fill(PASSWORD);
  await theirs.getByRole('button', { name: 'Take it up' }).click();
  await expect(theirs.getByRole('heading', { level: 1 })).toContainText('NEW');
  await expect(theirs.getByRole('navigation', { name: 'Pages' })).not.toContainText('Settings');
  await page.goto(link);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('This link is no longer good');

  await theirs.goto('/account/second-factor');
  await theirs.getByLabel('Your password').fill(PASSWORD);
  await theirs.getByRole('button', { name: 'Begin' }).click();
  const secret = (await theirs.locator('#scan code').innerText()).replaceAll(' ', '');
  const spare = await theirs.locator('#spare code').first().innerText();
  await theirs.getByLabel('Code, six digits').fill(await createOTP(textOf(secret)).totp());
  await theirs.getByRole('button', { name: 'Ask for it from now on' }).click();
  await expect(theirs.getByText('It is asked for when you sign in.')).toBeVisible();
  await theirs.getByRole('button', { name: 'Sign out', exact: true }).click();
  await signIn(theirs, 'nola', PASSWORD);
  await theirs.getByLabel(/^Code, six digits/).fill('123');
  await theirs.getByRole('button', { name: 'Sign in' }).click();
  await expect(theirs.getByRole('status')).toContainText('That code is not right');
  await theirs.getByLabel(/^Code, six digits/).fill(spare);
  await theirs.getByRole('button', { name: 'Sign in' }).click();
  await expect(theirs.getByRole('heading', { level: 1 })).toContainText('NEW');

  await page.goto('/settings/people');
  await expect(page.getByRole('row', { name: /^NEW/ })).toContainText('as nola, with second factor');
  await page.getByRole('button', { name: 'Sign NEW out' }).click();
  await expect(page.getByRole('status')).toContainText('NEW is signed out');
  await theirs.goto('/jobs');
  await expect(theirs.getByRole('heading', { level: 1 })).toHaveText('Sign in');
  await own.close();
});

/** RFC 4648, base 32. */
function textOf(secret: string): string {
  const bits = Array.from(secret)
    .map((letter) => 'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567'.indexOf(letter).toString(2).padStart(5, '0'))
    .join('');
  return (bits.match(/.{8}/g) ?? []).map((byte) => String.fromCharCode(parseInt(byte, 2))).join('');
}
