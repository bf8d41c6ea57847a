import { expect, test, type Page } from '@playwright/test';

test('the calibration page holds what was said against what was proved', async ({ page }) => {
  await page.goto('/calibration');
  await expect(page.getByRole('heading', { level: 1, name: 'Calibration' })).toBeVisible();
  const gauge = page.getByRole('region', { name: 'Said: gauge alone' });
  await expect(gauge.getByRole('img', { name: /^Said: gauge alone/ })).toBeVisible();
  const rows = gauge.getByRole('table').locator('tbody tr');
  await expect(rows).toHaveCount(10);
  const last = rows.last();
  await expect(last.getByRole('rowheader')).toHaveText(/90\sto\s100\s%/);
  await expect(last).toContainText(/\d+\s%\sto\s>?\s?\d+\s%/);
  await expect(gauge).toContainText(/percentage points/);

  const score = page.getByRole('region', { name: 'Brier score' });
  await expect(score.getByRole('row', { name: /^All four causes/ })).toContainText(/0\.\d{3} to 0\.\d{3}/);
  await expect(score.getByRole('img', { name: /^Brier score month by month/ })).toBeVisible();
  expect(
    await score
      .getByRole('table', { name: /^Month by month/ })
      .getByRole('row')
      .count(),
  ).toBeGreaterThan(6);
  await expect(page.getByText(/That proof uses the same model as the verdict/)).toBeVisible();
});

/** How many heights of the demo shop are called likely gauge by the present threshold. */
async function likelyGauge(page: Page): Promise<number> {
  await page.goto('/calibration');
  const row = page.getByRole('row', { name: /^Likely gauge/ });
  return Number((await row.getByRole('cell').first().innerText()).replace(',', ''));
}

async function set(page: Page, cost: string) {
  await page.goto('/settings');
  await page.getByLabel(/^Missing damage costs as much as/).fill(cost);
  const panel = page.getByRole('region', { name: 'What missing damage costs' });
  await panel.getByRole('button', { name: 'Set it' }).click();
}

test('the manager sets what missing damage costs, and all pages call heights by it', async ({ page }) => {
  const usual = await likelyGauge(page);
  await page.goto('/settings');
  const history = page.getByRole('table', { name: 'What was set before, newest first' });
  // Whoever may set it is tried on every route, so it may have been set to what it is.
  const never = page.getByText('Nobody has set it yet: the usual value of 9 holds.');
  await expect(never.or(history.getByRole('rowheader', { name: '9', exact: true })).first()).toBeVisible();
  try {
    await set(page, '99');
    await expect(page.getByRole('status')).toContainText('Set.');
    await expect(page.getByText(/one missed damage is worth 99 needless re-hangs/)).toBeVisible();
    await expect(history.getByRole('row').nth(1)).toContainText('GRE');
    expect(await likelyGauge(page)).toBeLessThan(usual);
    await page.goto('/method');
    await expect(page.getByText(/only from 99\s% on/)).toBeVisible();
    await set(page, '3');
    await expect(page.getByRole('status')).toContainText('Set.');
    expect(await likelyGauge(page)).toBeGreaterThanOrEqual(usual);
  } finally {
    await set(page, '9');
  }
  expect(await likelyGauge(page)).toBe(usual);
});

test('a threshold out of range, or set from elsewhere, is refused', async ({ page }) => {
  for (const cost of ['1', '1000', 'much']) {
    const answer = await page.request.post('/settings/miss-cost', { form: { cost } });
    expect(await answer.text(), cost).toContain('Nothing was changed: write a number from');
  }
  const foreign = await page.request.post('/settings/miss-cost', {
    form: { cost: '9' },
    headers: { 'sec-fetch-site': 'cross-site' },
  });
  expect(foreign.status()).toBe(403);
});
