import { expect, test } from '@playwright/test';

test('the list of jobs can be searched, filtered, sorted and paged', async ({ page }) => {
  await page.goto('/jobs');
  const rows = page.getByRole('table').locator('tbody tr');
  await expect(rows).toHaveCount(50);

  const first = await rows.first().getByRole('rowheader').innerText();
  await page.getByRole('link', { name: 'Next', exact: true }).click();
  await expect(page.getByText(/^Page 2 of/)).toBeVisible();
  expect(await rows.first().getByRole('rowheader').innerText()).not.toBe(first);

  await page.getByLabel('Job number or sheet').fill(first);
  await page.getByRole('button', { name: 'Show', exact: true }).click();
  await expect(rows).toHaveCount(1);
  await expect(rows.first().getByRole('rowheader')).toHaveText(first);

  await page.getByRole('link', { name: 'Show all' }).click();
  await expect(rows).toHaveCount(50);
  await page.getByLabel('Outcome').selectOption({ label: 'Not right first time' });
  await page.getByRole('button', { name: 'Show', exact: true }).click();
  await expect(page).toHaveURL(/outcome=wrong/);
  await expect(rows.filter({ hasText: 'Not right first time' })).toHaveCount(await rows.count());

  await page.getByRole('link', { name: 'Job', exact: true }).click();
  await expect(page.getByRole('columnheader', { name: 'Job' })).toHaveAttribute('aria-sort', 'ascending');
  const numbers = await rows.getByRole('rowheader').allInnerTexts();
  expect(numbers).toEqual([...numbers].sort());
});

test('an address that cannot be understood shows all jobs and says what was left out', async ({ page }) => {
  await page.goto('/jobs?page=abc&outcome=splendid');
  await expect(page.getByText('“abc” is not understood as page')).toBeVisible();
  await expect(page.getByText('“splendid” is not understood as outcome')).toBeVisible();
  await expect(page.getByRole('table').locator('tbody tr')).toHaveCount(50);
});

test('a search without a match says so', async ({ page }) => {
  await page.goto('/jobs?search=no-such-job-number');
  await expect(page.getByText('No job fits all of this.')).toBeVisible();
});

test('a job shows its dimensions, the picture of its vehicle, and the readings behind a figure', async ({
  page,
}) => {
  await page.goto('/jobs?sort=job');
  await page.getByRole('table').locator('tbody').getByRole('rowheader').first().getByRole('link').click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(/^Job /);
  await expect(
    page.getByRole('img', { name: /The vehicle from below and from both sides/ }).first(),
  ).toBeVisible();
  const heights = page.getByRole('table', { name: /^Heights, mm;/ }).first();
  await expect(heights.getByRole('columnheader')).toHaveText([
    'Point',
    'Deviation',
    'Gauge or body',
    'Sheet',
    'Read',
    'Tolerance',
    'Uncertainty',
    'Setup',
  ]);
  await heights.locator('tbody tr').first().locator('summary').click();
  await expect(heights.getByText('Gauge part').first()).toBeVisible();
  await expect(page.getByText('It is never a clearance of the structure.')).toBeVisible();

  await heights.locator('tbody tr').first().getByRole('link').last().click();
  await expect(page.getByRole('table', { name: /^Readings of setup/ }).first()).toBeVisible();
});

test('the vehicle is shown before and after beside or over each other, with what the picture says in words and numbers', async ({
  page,
}) => {
  await page.goto('/jobs/K4105');
  const pictures = page.getByRole('img', { name: /The vehicle from below and from both sides/ });
  const choices = page.getByRole('navigation', { name: 'Which rounds the picture shows' });
  await expect(choices.getByRole('link', { name: 'Before beside after' })).toHaveAttribute(
    'aria-current',
    'true',
  );
  await expect(pictures).toHaveCount(2);
  await expect(pictures.first()).toHaveAccessibleName(
    /^Before, round 1\..*Left side, front to rear: A .*Right side/,
  );

  await choices.getByRole('link', { name: 'After over before' }).click();
  await expect(page).toHaveURL(/show=over/);
  await expect(pictures).toHaveCount(1);
  await expect(pictures).toHaveAccessibleName(/^After, round 1\..*\(before −/);

  const numbers = page.getByRole('table', { name: /^Heights of the picture/ });
  await page.getByText('The numbers of this picture').click();
  await expect(numbers.getByRole('columnheader', { name: 'Body part' })).toHaveCount(2);

  const patterns = page.getByRole('region', { name: 'Patterns of the structure' });
  await expect(patterns.getByRole('heading', { level: 3 })).toHaveText(['Before, round 1', 'After, round 1']);
  await patterns
    .getByText(/^Not borne out, and why/)
    .last()
    .click();
  const why = patterns.getByRole('table', { name: /^Patterns that are not borne out/ }).last();
  await expect(why.getByRole('row', { name: /^Sag/ })).toContainText('gauges set wrong explain it better');

  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: /Chart as a picture/ }).click(),
  ]);
  expect(file.suggestedFilename()).toBe('job-K4105-over.svg');
});

test('an unknown job, technician or gauge is a page that does not exist', async ({ page }) => {
  for (const address of [
    '/jobs/none-of-this-number',
    '/technicians/NOBODY',
    '/gauges/NONE',
    '/load/17',
    '/nowhere',
  ]) {
    const response = await page.goto(address);
    expect(response?.status(), address).toBe(404);
    await expect(page.getByRole('heading', { level: 1, name: 'There is no such page' })).toBeVisible();
  }
});
