import { expect, test, type Page } from '@playwright/test';
import { fileOf, measurementFile, OF_THE_DEMO_SHOP } from './measurement-file';

/** In the demo shop: a zero gauge set 12.9 mm wrong, whose own reading looks perfect. */
const TILTED = '/jobs/K4105/evidence?round=after-1';

test('every verdict of a job page leads to its evidence in one click', async ({ page }) => {
  await page.goto('/jobs/K4105');
  const heights = page.getByRole('table', { name: /^Heights, mm;/ }).last();
  const rows = heights.locator('tbody tr');
  await expect(heights.getByRole('link', { name: /^Why/ })).toHaveCount(await rows.count());
  const first = rows.first();
  const name = (await first.getByRole('rowheader').innerText()).split(' ')[0] ?? '';
  await first.getByRole('link', { name: /^Why\s*: the evidence for/ }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Evidence: After, round 1');
  const target = page.locator('tr:target');
  await expect(target.getByRole('rowheader')).toContainText(name);
  await expect(target).toBeInViewport();
});

test('the evidence names the zero gauge that tilts the datum, in words, numbers and a picture', async ({
  page,
}) => {
  await page.goto(TILTED);
  const explanations = page.getByRole('region', { name: 'What would explain the heights' });
  const leading = explanations.getByRole('listitem').filter({ has: page.getByRole('heading', { level: 3 }) });
  await expect(leading.first().getByRole('heading')).toContainText(/Zero gauge CG2 at C and D .* high/);
  await expect(leading.first().getByRole('heading')).toContainText('so the datum is tilted');
  await expect(leading.first()).toContainText(/Probability\s+>?\s?9\d\s%/);
  await expect(leading.first()).toContainText(/The datum is off by \+1[2-5]\.\d\smm left/);
  const picture = leading.first().getByRole('img', { name: /^Stations from the side under explanation A/ });
  await expect(picture).toBeVisible();
  await expect(picture.getByText('gauge', { exact: true }).first()).toBeVisible();
  await expect(leading.first()).toContainText(/drawn \d+ times as large as distances along the vehicle/);

  const weighing = page.getByRole('table', { name: /^How many times likelier/ });
  await expect(weighing.getByRole('row').nth(1)).toContainText('This shop’s history');
  expect(await weighing.getByRole('row').count()).toBeGreaterThan(6);
  await expect(page.getByText(/^All together A is .* times likelier than B\.$/)).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Before anything is done to this vehicle' })).toBeVisible();
});

test('all checks are listed in words, with bits and minutes', async ({ page }) => {
  await page.goto(TILTED);
  const checks = page.getByRole('region', { name: 'What to check next' }).getByRole('listitem');
  expect(await checks.count()).toBeGreaterThan(1);
  for (const check of await checks.all())
    await expect(check).toContainText(/\d\.\d\d\sbits, about \d+\sminutes?/);
  await expect(checks.first()).toContainText('zero gauge');
});

test('an address of no round is a page that does not exist', async ({ page }) => {
  for (const address of [
    '/jobs/K4105/evidence?round=after-9',
    '/jobs/K4105/evidence?round=nonsense',
    '/jobs/none-of-this-number/evidence',
  ])
    expect((await page.goto(address))?.status(), address).toBe(404);
});

/** One job whose front gauge reads 9.5 mm low on the left. */
async function loadDoubtful(page: Page, job: string) {
  const file = measurementFile({ job, by: OF_THE_DEMO_SHOP }).replace(
    /(F,L,front,300,no,250,3,100),350\.5/,
    '$1,340.5',
  );
  await page.goto('/load');
  await page.getByLabel('Measurement file').setInputFiles(fileOf(`${job}.csv`, file));
  await page.getByRole('button', { name: 'Check the file' }).click();
  await page.getByRole('button', { name: /^Load \d+ readings$/ }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'The file is loaded' })).toBeVisible();
}

test('what a re-check showed is recorded by a person, and evidence and verdict follow', async ({ page }) => {
  await loadDoubtful(page, 'E2E-OUTCOME');
  const address = '/jobs/E2E-OUTCOME/evidence?round=before-1';
  const verdict = async () => {
    await page.goto(address);
    const row = page.getByRole('table', { name: 'Deviations from the sheet, millimetres' }).getByRole('row');
    return (await row.filter({ hasText: /^F left/ }).innerText()).replace(/\s+/g, ' ');
  };
  const before = await verdict();

  const outcome = page.getByRole('region', { name: 'What a re-check showed' });
  await expect(outcome).toContainText('Nothing is on record for this round yet.');
  await outcome.getByLabel('Which height').selectOption({ label: 'F left, setup B1-03, CG3' });
  await outcome.getByLabel(/^The gauge: hung again/).check();
  await outcome.getByLabel(/^Note/).fill('marks did not agree');
  await outcome.getByRole('button', { name: 'Record what the re-check showed' }).click();

  await expect(outcome.getByRole('status')).toContainText('Recorded.');
  const record = outcome.getByRole('table').getByRole('row').nth(1);
  await expect(record).toContainText('F left (B1-03)');
  await expect(record).toContainText('the gauge');
  await expect(record).toContainText('GRE');
  await expect(record).toContainText('marks did not agree');
  // The verdict follows at once; what is learned from it, behind the pages.
  await expect(page.getByRole('row', { name: /^Re-checks on record/ })).toContainText('likelier');
  expect(before).not.toContain('not judged');
  expect(before).not.toContain('gauge');
  expect(await verdict()).toContain('gauge');
  await page.goto('/calibration');
  await expect(page.getByRole('region', { name: 'What was called, and what it proved to be' })).toBeVisible();
});

test('a form that is incomplete, too large or sent from elsewhere records nothing', async ({ page }) => {
  const path = '/jobs/K4105/evidence/outcome';
  const form = { round: 'after-1', height: '["A9-99","L"]', cause: 'gauge', note: '' };
  const unknown = await page.request.post(path, { form });
  expect(await unknown.text()).toContain('Nothing was recorded: there is no such setup');
  const incomplete = await page.request.post(path, { form: { ...form, cause: 'splendid' } });
  expect(await incomplete.text()).toContain('Nothing was recorded: choose the height');
  const large = await page.request.post(path, { form: { ...form, note: 'x'.repeat(20_000) } });
  expect(large.status()).toBe(413);
  const foreign = await page.request.post(path, { form, headers: { 'sec-fetch-site': 'cross-site' } });
  expect(foreign.status()).toBe(403);
});
