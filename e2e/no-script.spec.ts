import { expect, test } from '@playwright/test';
import { PAGES } from './pages';

test.use({ javaScriptEnabled: false });

test('every page can be read without scripts', async ({ page }) => {
  for (const [address, heading] of PAGES) {
    await page.goto(address);
    const main = page.locator('main:visible');
    await expect(main, address).toHaveCount(1);
    await expect(main.getByRole('heading', { level: 1 })).toHaveText(heading);
    await expect(main).not.toContainText('Working it out');
  }
});

test('the figure of the overview is drawn without scripts', async ({ page }) => {
  await page.goto('/');
  await expect(page.getByRole('img', { name: /^Right first time by month/ })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Read it month by month' })).toBeHidden();
});

test('jobs are filtered by a plain form', async ({ page }) => {
  await page.goto('/jobs');
  await page.getByLabel('Outcome').selectOption('right');
  await page.getByRole('button', { name: 'Show', exact: true }).click();
  await expect(page).toHaveURL(/outcome=right/);
});
