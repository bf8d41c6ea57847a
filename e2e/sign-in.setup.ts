import { expect, test } from '@playwright/test';
import { SIGNED_IN, SIGN_IN_NAMES, type User } from './signed-in';

for (const user of Object.keys(SIGNED_IN) as User[]) {
  test(`the ${user} signs in`, async ({ page }) => {
    await page.goto('/jobs');
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Sign in');
    await page.getByRole('button', { name: new RegExp(`Sign in as .*${user}`) }).click();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Jobs');
    await expect(
      page.getByRole('link', { name: `My account, ${SIGN_IN_NAMES[user].toUpperCase()}` }),
    ).toBeVisible();
    await page.context().storageState({ path: SIGNED_IN[user] });
  });
}
