import { parse } from 'csv-parse/sync';
import { expect, test } from '@playwright/test';
import { SIGNED_IN } from './signed-in';

test.use({ storageState: SIGNED_IN.trainer });

/** The habits planted in the demo shop (seed/people.ts), as the matrix names them. */
const PLANTED = [
  ['ASH', 'Last digits preferred'],
  ['MAR', 'Clearance left out or added twice'],
  ['THI', 'Heights read before the center section'],
  ['WIN', 'One hanger always low'],
] as const;

test('the trainer: the matrix shows the planted habits and no other', async ({ page }) => {
  await page.goto('/habits');
  const matrix = page.getByRole('table', { name: /^Habits by technician/ });
  await expect(matrix.getByRole('link', { name: /^Found/ })).toHaveCount(PLANTED.length);
  for (const [technician, habit] of PLANTED)
    await expect(matrix.getByRole('link', { name: `Found in ${technician}: ${habit}` })).toBeVisible();
  await expect(matrix.getByRole('link', { name: /^Too few readings in BEC: / }).first()).toBeVisible();
  const heads = await matrix.getByRole('columnheader').getByRole('link').allInnerTexts();
  expect(heads).toEqual([...heads].sort());
  await expect(page.getByText(/at most 5\s% are expected to be false alarms/)).toBeVisible();
});

test('the trainer: from the matrix to the evidence, and on to the readings, in two clicks', async ({
  page,
}) => {
  await page.goto('/habits');
  await page.getByRole('link', { name: 'Found in WIN: One hanger always low' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('One hanger always low');
  const evidence = page.getByRole('region', { name: 'WIN Found' });
  await expect(evidence).toContainText(/95\s% interval −\d\.\d\d to −\d\.\d\d/);
  await expect(evidence).toContainText('Adjusted p');
  await expect(evidence).toContainText(/Setups looked at\d+/);
  await expect(page.getByRole('heading', { name: 'How to train it' })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'What else could look the same' })).toBeVisible();
  await page
    .getByRole('table', { name: 'Setups that show it, newest first' })
    .getByRole('rowheader')
    .first()
    .getByRole('link')
    .click();
  await expect(page).toHaveURL(/\/jobs\/.*#setup-/);
  await expect(page.locator(':target').getByRole('table', { name: /^Readings of setup/ })).toBeVisible();
});

test('the trainer: the habits of some months and one sheet, and what opens from them stays within', async ({
  page,
}) => {
  await page.goto('/habits');
  await page.getByLabel('Newest months').selectOption('6');
  await page.getByRole('search', { name: 'Which readings' }).getByRole('button', { name: 'Show' }).click();
  await expect(page).toHaveURL(/last=6/);
  await expect(page.getByText(/^These are the jobs begun Jun 2026 to Nov 2026\./)).toBeVisible();
  const matrix = page.getByRole('table', { name: /^Habits by technician/ });
  await matrix.getByRole('link', { name: 'Found in WIN: One hanger always low' }).click();
  await expect(page).toHaveURL(/last=6.*technician=WIN/);
  const setups = page.getByRole('table', { name: 'Setups that show it, newest first' });
  for (const text of await setups.getByText(/ 202[56], /).allInnerTexts())
    expect(text).toMatch(/(Jun|Jul|Aug|Sept?|Oct|Nov) 2026/);
  await page.goto('/habits?sheet=Coupe&technician=WIN');
  expect(await matrix.getByRole('columnheader').getByRole('link').allInnerTexts()).toEqual(['WIN']);
});

test('a habit’s page shows every technician with an interval, in the order of codes', async ({ page }) => {
  await page.goto('/habits/low-hanger');
  const effects = page.getByRole('table', { name: /^One hanger always low, by technician/ });
  const codes = await effects.getByRole('rowheader').allInnerTexts();
  expect(codes.length).toBeGreaterThan(3);
  expect(codes).toEqual([...codes].sort());
  for (const row of await effects.locator('tbody tr').all())
    await expect(row).toContainText(/[+−]?\d\.\d\d to [+−]?\d\.\d\d/);
});

test('a habit that does not exist, or of nobody here, is a page that does not exist', async ({ request }) => {
  expect((await request.get('/habits/left-handed')).status()).toBe(404);
  expect((await request.get('/habits/low-hanger?technician=NOBODY')).status()).toBe(404);
});

test('the matrix as a file: a line a technician and habit, found ones with their setups', async ({
  request,
}) => {
  const lines: Record<string, string>[] = parse(await (await request.get('/habits/download')).text(), {
    columns: true,
  });
  const found = lines.filter(({ state }) => state === 'found');
  expect(found.map(({ technician, name }) => [technician, name])).toEqual(PLANTED);
  for (const { adjusted_p, shown_by } of found) {
    expect(Number(adjusted_p)).toBeLessThanOrEqual(0.05);
    expect(shown_by).toMatch(/^\S+\/\S+/);
  }
});

test('the matrix and every table of intervals are had as pictures that say what they show', async ({
  request,
}) => {
  for (const [address, words] of [
    ['/habits/picture', 'MAR: found Clearance left out or added twice'],
    ['/habits/picture?habit=low-hanger', 'WIN: −'],
    ['/figures/technicians/picture?of=setting', 'The shop: '],
    ['/figures/gauges/picture', 'CG4: '],
  ] as const) {
    const picture = await request.get(address);
    expect(picture.headers()['content-type'], address).toContain('image/svg+xml');
    expect(/<desc>(.*)<\/desc>/.exec(await picture.text())?.[1], address).toContain(words);
  }
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 } });

  test('the matrix is a list by technician, and the page does not scroll sideways', async ({ page }) => {
    await page.goto('/habits');
    await expect(page.getByRole('table', { name: /^Habits by technician/ })).toBeHidden();
    const mar = page.getByRole('region', { name: 'Habits of MAR' });
    await expect(mar.getByRole('link', { name: 'Clearance left out or added twice' })).toBeVisible();
    await mar.getByText(/^\d+ not found/).click();
    await expect(mar.getByRole('link', { name: 'One hanger always low' })).toBeVisible();
    expect(
      await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
    ).toBeLessThanOrEqual(0);
  });
});

test('training: the habits found by technician, and on to habits and trials', async ({ page }) => {
  await page.goto('/training');
  const found = page.getByRole('table', { name: 'Habits found, by technician' });
  const codes = await found.getByRole('rowheader').allInnerTexts();
  expect(codes).toEqual([...codes].sort());
  for (const [technician, habit] of PLANTED)
    await expect(found.getByRole('row', { name: new RegExp(`^${technician} `) })).toContainText(habit);
  await expect(page.getByRole('link', { name: 'Repeat trials' })).toHaveAttribute('href', '/trials');
  await page.getByRole('link', { name: 'Habits and their evidence' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Habits');
});

test('training: a hand that changed stands there with what to do next, and opens', async ({ page }) => {
  await page.goto('/training');
  const changed = page.getByRole('region', { name: 'Changes beyond chance' });
  await expect(changed.getByRole('listitem')).toHaveCount(1);
  await expect(changed).toContainText('hang the same gauges on one vehicle');
  await changed.getByRole('link', { name: 'Open LAR' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Noor Larkspindle, LAR');
});

test('the trainer: setting error of technicians and bias of gauges, each with an interval', async ({
  page,
}) => {
  await page.goto('/training');
  const setting = page.getByRole('table', { name: 'Scatter of setting (standard deviation), by technician' });
  const codes = await setting.getByRole('rowheader').allInnerTexts();
  expect(codes).toEqual([...codes].sort());
  await expect(setting.locator('tbody tr').first()).toContainText(/\d\.\d\d to \d/);
  await page
    .getByRole('table', { name: 'Bias of heights, by gauge' })
    .getByRole('rowheader')
    .first()
    .getByRole('link')
    .click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(/^Gauge /);
  await expect(page.getByRole('heading', { name: 'Verifications' })).toBeVisible();
});
