import { parse } from 'csv-parse/sync';
import { expect, test } from '@playwright/test';
import { SIGNED_IN } from './signed-in';

test.use({ storageState: SIGNED_IN.manager });

const rowsOf = (text: string): Record<string, string>[] => parse(text, { columns: true, bom: true });

test('a signal says what changed, since when and what to do next, and opens its chart and its hand', async ({
  page,
}) => {
  await page.goto('/');
  const lines = page.locator('#signals').getByRole('listitem');
  await expect(lines).toHaveCount(1);
  await expect(lines).toContainText(/technician LAR: −0\.\d+\smm \(\d+ rounds\) from July? 2026 on/);
  await expect(lines).toContainText('hang the same gauges on one vehicle');
  await lines.getByRole('link', { name: 'Its chart' }).click();
  const list = page.getByRole('region', { name: 'Beyond a limit in the last months' });
  await expect(list).toContainText('about once in 24');
  const chart = page.getByRole('region', { name: 'Setting error, its mean, technician LAR' });
  await expect(chart.getByRole('img')).toHaveAccessibleName(/[Bb]eyond a limit/);
  await expect(chart.getByRole('img')).not.toHaveAccessibleName(/No month/);
  await list.getByRole('link', { name: 'Open LAR' }).click();
  const practice = page.getByRole('region', { name: 'What to practise next' });
  await expect(practice).toContainText(/from July? 2026 on, against/);
  await expect(practice.getByRole('link', { name: 'Its chart' })).toBeVisible();
});

test('a series without a signal is shown when it is asked for', async ({ page }) => {
  await page.goto('/rates/signals?series=setting-scatter-technician-QUI');
  const card = page.getByRole('region', { name: 'Setting error, its scatter, technician QUI' });
  await expect(card.getByRole('img')).toHaveAccessibleName(/No month is beyond a limit/);
  await card.getByText('The months as a table').click();
  // After the training the scatter is below what it was, which is not yet beyond chance.
  await expect(card.getByRole('row', { name: /Oct 2026/ })).toContainText(/−\d/);
});

test('rates by technician stand in the order of names, each with an interval, a place and what was expected', async ({
  page,
}) => {
  await page.goto('/rates');
  const table = page.getByRole('table', { name: /^Right first time by technician/ });
  const names = await table.getByRole('rowheader').allInnerTexts();
  expect(names).toEqual([...names].sort());
  const newcomer = table.getByRole('row', { name: /^BEC/ });
  await expect(newcomer).toContainText('*');
  await expect(page.getByText(/^\* BEC: Only \d+\sjobs/)).toBeVisible();
  // Observed over expected with its interval below 1, and beyond chance.
  await expect(table.getByRole('row', { name: /^QUI/ })).toContainText(
    /0\.\d\d to 0\.\d\d\s*(< 0\.001|0\.00\d)$/,
  );
  await expect(page.getByRole('img', { name: /^Funnel of right first time by technician/ })).toBeVisible();
});

test('a weak month opens from the rates to its jobs and from there to the setups', async ({ page }) => {
  await page.goto('/rates');
  await page.getByLabel('Side by side').selectOption({ label: 'By month' });
  await page.getByRole('button', { name: 'Show', exact: true }).click();
  const september = page
    .getByRole('table', { name: /^Right first time by month/ })
    .getByRole('row', { name: /^Sept? 2026/ });
  await expect(september).toContainText(/Below the 9\S+ % limit/);
  const counted = /(\d+) of (\d+)/.exec((await september.innerText()).replaceAll('\u00a0', ' '));
  await september.getByRole('link').click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(/^Month: Sept? 2026$/);
  const jobs = page.getByRole('table').locator('tbody tr');
  await expect(jobs).toHaveCount(Number(counted?.[2]));
  await expect(jobs.filter({ hasNotText: 'Not right first time' })).toHaveCount(Number(counted?.[1]));
  await jobs.first().getByRole('link').click();
  await expect(page).toHaveURL(/\/jobs\/K\d+$/);
});

test('a filter counts those jobs alone, on the page and in the file', async ({ page, request }) => {
  await page.goto('/rates');
  await page.getByLabel('Side by side').selectOption({ label: 'By month' });
  await page.getByLabel('Technician', { exact: true }).selectOption('QUI');
  await page.getByLabel('From month').selectOption({ label: 'May 2026' });
  await page.getByRole('button', { name: 'Show', exact: true }).click();
  await expect(page.getByText('Right, jobs of QUI, from May 2026', { exact: true })).toBeVisible();
  const table = page.getByRole('table', { name: /^Right first time by month/ });
  await expect(table.getByRole('rowheader').first()).toHaveText('May 2026');
  const address = await page
    .getByRole('link', { name: /^Table as CSV ?: rates by month$/ })
    .getAttribute('href');
  const answer = await request.get(address ?? '');
  expect(answer.headers()['content-disposition']).toContain('rates-by-month.csv');
  const rows = rowsOf(await answer.text());
  expect(rows).toHaveLength(await table.getByRole('rowheader').count());
  expect(rows[0]).toMatchObject({ month: '2026-05' });
  expect(Number(rows[0]?.rate_low_95)).toBeLessThan(Number(rows[0]?.rate));
});

test('what cannot be understood in the address is left out, and a sentence says so', async ({ page }) => {
  await page.goto('/rates?by=weather&from=soon');
  await expect(page.getByText('“weather” is not understood as by')).toBeVisible();
  await expect(page.getByText('“soon” is not understood as from')).toBeVisible();
  await expect(page.getByRole('table', { name: /by technician, all jobs/ })).toBeVisible();
});

test('charts are handed out as pictures in light colours that say what they show', async ({ request }) => {
  for (const place of [
    '/rates/picture?by=gauge',
    '/rates/signals/picture?series=setting-scatter-technician-QUI',
    '/what-if/picture',
  ]) {
    const answer = await request.get(place);
    expect(answer.headers()['content-type'], place).toContain('image/svg+xml');
    expect(answer.headers()['content-disposition'], place).toContain('.svg"');
    const text = await answer.text();
    expect(text, place).toMatch(/^<svg xmlns=/);
    expect(text, place).toContain('<desc>');
    expect(text, place).not.toContain('var(');
  }
  expect((await request.get('/rates/signals/picture?series=weather')).status()).toBe(404);
});

test('what measuring error does to the rate is told with intervals, cautioned, and opens to jobs', async ({
  page,
  request,
}) => {
  await page.goto('/rates#measuring-error');
  const panel = page.getByRole('region', { name: 'What measuring error does to the rate' });
  await expect(panel).toContainText(/Of \d+ jobs called right, [\d.]+ \(\d+ to \d+\) are expected not to be/);
  await expect(panel).toContainText('it clears no vehicle');
  await expect(panel.getByRole('table', { name: /ordinary setting in this shop/ })).toBeVisible();
  const rows = rowsOf(await (await request.get('/rates/error')).text());
  expect(rows.length).toBeGreaterThan(0);
  await panel
    .getByRole('link', { name: /^K\d+$/ })
    .first()
    .click();
  await expect(page).toHaveURL(/\/jobs\/K\d+$/);
});

test('other rules stand beside as now, and better or worse is said with the interval of the change', async ({
  page,
  request,
}) => {
  await page.goto('/rates');
  await page.getByRole('link', { name: 'What if' }).first().click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('What if');
  const change = page.getByRole('table', { name: /^Change against as now/ });
  const rehang = change.getByRole('row', { name: /^A dimension that is out is hung again once/ });
  await expect(rehang).toContainText('better');
  await expect(rehang).toContainText('worse');
  await expect(page.getByText(/They are judgements, not measured in this shop/)).toBeVisible();
  const rows = rowsOf(await (await request.get('/what-if/download')).text());
  for (const { low_95, high_95, scenario } of rows)
    expect(Number(low_95), scenario).toBeLessThanOrEqual(Number(high_95));
  expect(new Set(rows.map(({ scenario }) => scenario)).size).toBeGreaterThan(4);
});

test('any gauge may be taken out of service in what-if', async ({ page, request }) => {
  await page.goto('/what-if');
  const gauge = page.getByLabel('Gauge out of service');
  await expect(gauge.locator('option:checked')).toContainText('farthest off');
  await gauge.selectOption('CG2');
  await page.getByRole('form', { name: 'Which gauge' }).getByRole('button', { name: 'Show' }).click();
  const change = page.getByRole('table', { name: /^Change against as now/ });
  await expect(change.getByRole('row', { name: /^Gauge CG2 out of service/ })).toBeVisible();
  await expect(page.getByRole('img', { name: /Gauge CG2 out of service: needless re-dos/ })).toBeVisible();
  await expect(page.getByText(/It rests on everything measured from \d+ Nov 2025 to/)).toBeVisible();
  expect(await (await request.get('/what-if/picture?without=CG2')).text()).toContain(
    'Gauge CG2 out of service',
  );
});

test.describe('a technician', () => {
  test.use({ storageState: SIGNED_IN.technician });

  test('is not led to these pages', async ({ page }) => {
    await page.goto('/jobs');
    await expect(page.getByRole('link', { name: 'Jobs', exact: true }).first()).toBeVisible();
    await expect(page.getByRole('link', { name: 'Right first time', exact: true })).toHaveCount(0);
  });
});
