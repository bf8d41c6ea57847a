import { expect, test } from '@playwright/test';
import { fileOf, measurementFile } from './measurement-file';
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

test('jobs are filtered and a file is loaded by plain forms', async ({ page }) => {
  await page.goto('/jobs');
  await page.getByLabel('Outcome').selectOption('right');
  await page.getByRole('button', { name: 'Show', exact: true }).click();
  await expect(page).toHaveURL(/outcome=right/);

  await page.goto('/load');
  await page.getByRole('button', { name: 'Check the file' }).click();
  await expect(page.getByText('No file was chosen.')).toBeVisible();
  await page
    .getByLabel('Measurement file')
    .setInputFiles(fileOf('plain.csv', measurementFile({ job: 'E2E-PLAIN' })));
  await page.getByRole('button', { name: 'Check the file' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'The file can be loaded' })).toBeVisible();
  await page.getByRole('button', { name: /^Load \d+ readings$/ }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('The file is loaded');
});
