import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { fileOf, measurementFile } from './measurement-file';
import { enterOtherShop } from './other-shop';
import { NOBODY, SIGNED_IN } from './signed-in';
import { IN_SMALL_SHOP, test } from './small-shop';

test.use(IN_SMALL_SHOP);

async function load(page: Page, job: string, text = measurementFile({ job })) {
  await page.goto('/load');
  await page.getByLabel('Measurement file').setInputFiles(fileOf(`${job}.csv`, text));
  await page.getByRole('button', { name: 'Check the file' }).click();
  await page.getByRole('button', { name: /^Load \d+ readings$/ }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'The file is loaded' })).toBeVisible();
}

async function revise(page: Page, what: string, value: string, reason: string) {
  const form = page.getByRole('region', { name: 'Correct or exclude a reading' });
  await form.getByLabel('Which reading').selectOption({ index: 1 });
  await form.getByLabel('What to do').selectOption(what);
  await form.getByLabel(/^Right value/).fill(value);
  await form.getByLabel('Why').fill(reason);
  await form.getByRole('button', { name: /^Do it/ }).click();
}

test('a reading is corrected and excluded with a reason, stays on record, and shows in trace and figures', async ({
  page,
}) => {
  await load(page, 'E2E-REVISED');
  await page.goto('/jobs/E2E-REVISED/readings');
  const rows = page.getByRole('table').first().getByRole('row');
  const first = await rows.nth(1).innerText();
  await revise(page, 'correct', '299,5', 'two digits exchanged');
  await expect(page.getByRole('status')).toContainText('Done.');
  await expect(page.getByRole('row', { name: /299\.5.*counts.*BOSS.*two digits exchanged/ })).toBeVisible();
  await expect(page.getByRole('row', { name: /replaced/ })).toContainText(first.split('\t')[0] ?? '');

  await revise(page, 'exclude', '', 'the pointer slipped');
  await expect(page.getByRole('row', { name: /excluded.*BOSS.*the pointer slipped/ })).toBeVisible();
  for (const place of ['/jobs', '/gauges', '/rates/jobs?by=technician&group=QUI', '/calibration'])
    expect(await (await page.request.get(place)).text(), place).toContain('excluded from these figures');
  await page.goto('/jobs/E2E-REVISED');
  await expect(page.getByText(/1\sreading is excluded from these figures/)).toBeVisible();

  await page.goto('/settings/trace?job=E2E-REVISED');
  const trace = page.getByRole('table', { name: 'The latest first' });
  await expect(trace.getByRole('row').nth(1)).toContainText('BOSS, on a page');
  await expect(trace.getByRole('row').nth(1)).toContainText('excluded');
  await expect(trace.getByRole('row').nth(2)).toContainText('two digits exchanged');

  await page.goto('/jobs/E2E-REVISED/readings');
  await revise(page, 'include', '', 'it was the right point');
  await page.goto('/jobs/E2E-REVISED');
  await expect(page.getByText(/excluded from these figures/)).toHaveCount(0);
});

test('a revision without a reason or a number changes nothing', async ({ page }) => {
  await load(page, 'E2E-UNREVISED');
  await page.goto('/jobs/E2E-UNREVISED/readings');
  await revise(page, 'correct', 'much', 'because');
  await expect(page.getByRole('status')).toContainText('Nothing was changed');
  await expect(page.getByRole('row', { name: /replaced/ })).toHaveCount(0);
});

test.describe('in the demo shop', () => {
  test.use({ storageState: SIGNED_IN.manager });

  test('what the shop holds about somebody comes as one file', async ({ page }) => {
    await page.goto('/account');
    const waiting = page.waitForEvent('download');
    await page.getByRole('link', { name: 'Download my file' }).click();
    const text = readFileSync(await (await waiting).path(), 'utf8');
    expect(JSON.parse(text)).toBeTruthy();
    expect(text).toContain('Greta Greyfeather');
    expect(text).not.toMatch(/password/i);
  });
});

test.describe('in a shop of one’s own', () => {
  test.use({ storageState: NOBODY });

  test('a person is removed, and the job goes on under a pseudonym', async ({ page }, { config }) => {
    await enterOtherShop(config, page.request, 'Removing Quay');
    await load(page, 'E2E-REMOVED');
    await page.goto('/settings/people');
    await page.getByLabel('Code of the person to remove').fill('TST');
    await page.getByLabel('The code once more').fill('TST');
    await page.getByRole('region', { name: 'Remove a person' }).getByLabel('Why').fill('asked for it');
    await page.getByRole('button', { name: 'Remove for good' }).click();
    await expect(page.getByRole('status')).toContainText('The readings stay under the name former-');
    await page.goto('/jobs/E2E-REMOVED');
    const job = page.getByRole('main');
    await expect(job).toContainText('former-');
    await expect(job).not.toContainText('TST');
  });
});
