import { expect, test } from '@playwright/test';
import Database from 'better-sqlite3';
import { databaseOf, LANES } from '@/lib/commands/lanes.mjs';
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

test('every lane knows these sessions', () => {
  const first = (test.info().config.webServer?.env?.DATABASE_URL ?? '').slice('file:'.length);
  for (let lane = 1; lane < LANES; lane++) {
    const database = new Database(databaseOf(first, lane));
    database.exec(`ATTACH '${first}' AS "first"`);
    const { changes } = database.prepare('INSERT INTO "Session" SELECT * FROM "first"."Session"').run();
    database.close();
    expect(changes).toBe(Object.keys(SIGNED_IN).length);
  }
});
