import { parse } from 'csv-parse/sync';
import { expect, test } from '@playwright/test';
import { SIGNED_IN } from './signed-in';

test.use({ storageState: SIGNED_IN.technician });

const COLLEAGUES = /\b(FEL|MAR|ASH|WIN|THI|LAR|BEC)\b/;

test('the technician: what to practise comes first, then the own hand beside the shop', async ({ page }) => {
  await page.goto('/');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(/^My hand: .*QUI$/);
  await expect(page.getByRole('heading', { level: 2 }).first()).toHaveText('What to practise next');
  await expect(page.getByRole('region', { name: 'What to practise next' })).toContainText(
    /Practise .*\d \(.* to .*\)|Practise .*\(\d.* to \d.*\)/,
  );
  const scatter = page.getByRole('table', { name: 'Scatter, standard deviations' });
  await expect(scatter.getByRole('row', { name: /^Reading again \d/ })).toContainText(/\d\.\d\d to \d/);
  await expect(scatter.getByRole('row', { name: /^The shop, setting again \d/ })).toBeVisible();
  const share = page.getByRole('table', { name: 'Share of the tolerance that this hand takes' });
  await expect(share.getByRole('row', { name: /^Both together \d+\s% \d+\s% to \d+\s%/ })).toBeVisible();
  await expect(page.getByRole('region', { name: /^Of the tolerance/ })).toContainText(
    /is (within )?a third of the tolerance/,
  );
});

test('the technician: places in their order, the less sure ones marked in a word', async ({ page }) => {
  await page.goto('/technicians/QUI');
  const distances = page.getByRole('table', { name: 'Scatter of setting by distance from the zero span' });
  await expect(distances.getByRole('row').nth(1)).toContainText('up to 500 mm');
  await expect(distances.getByRole('row', { name: /beyond 1500\smm/ })).toContainText('Less sure');
  const gauges = page.getByRole('table', { name: 'Scatter of setting by gauge' });
  const tags = await gauges.getByRole('rowheader').allInnerTexts();
  expect(tags).toEqual([...tags].sort());
  await gauges.getByRole('link', { name: 'CG1' }).click();
  await expect(page.getByRole('table', { name: /setups by QUI with CG1$/ })).toBeVisible();
});

test('the technician: over time beside the shop, as pictures and as a table', async ({ page }) => {
  await page.goto('/technicians/QUI');
  await expect(
    page.getByRole('img', { name: /^Scatter of reading again by quarter from .*the shop \d/ }),
  ).toBeVisible();
  await page.getByText('The quarters as a table').click();
  const table = page.getByRole('table', { name: /^This hand and the shop by quarter/ });
  await expect(table.getByRole('row', { name: /^2026 Q1, this hand/ })).toContainText(/mm \(\d\.\d\d to \d/);
  await expect(table.getByRole('row', { name: /^2026 Q1, the shop/ })).toBeVisible();
});

test('the technician: the last ten rounds say what was gauge, and a time holds them', async ({ page }) => {
  await page.goto('/technicians/QUI');
  const rounds = page.getByRole('region', { name: /^The last ten rounds/ });
  await expect(rounds.getByRole('heading', { level: 3 })).toHaveCount(10);
  const gauge = rounds.getByRole('listitem').filter({ hasText: /^\S+ (left|right).*Likely gauge/ });
  for (const height of await gauge.all()) await expect(height).toContainText('Re-hang and read again.');
  await page.getByLabel('From month').selectOption('2026-01');
  await page.getByLabel('Until month').selectOption('2026-03');
  await page
    .getByRole('search', { name: 'Which part of the work' })
    .getByRole('button', { name: 'Show' })
    .click();
  await expect(page).toHaveURL(/from=2026-01&to=2026-03/);
  await expect(rounds.getByRole('heading', { level: 3 })).toHaveCount(10);
  for (const text of await rounds.getByText(/^\d+ \w+ 2026, \d\d:\d\d\./).allInnerTexts())
    expect(text).toMatch(/^\d+ (Jan|Feb|Mar) 2026/);
  await expect(page.getByRole('img', { name: /by quarter from 2026 Q1 to 2026 Q1/ }).first()).toBeVisible();
  await rounds.getByRole('heading', { level: 3 }).first().getByRole('link').click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(/^Job /);
});

test('the technician: a part of the work is told beside the shop in the same, on the page and in its files', async ({
  page,
  request,
}) => {
  await page.goto('/technicians/QUI?last=3&section=rear');
  const scatter = page.getByRole('table', { name: /^Scatter in what was asked for/ });
  await expect(scatter.getByRole('row', { name: /^Setting, as judged \d/ })).toContainText(/\d\.\d\d to \d/);
  await expect(scatter.getByRole('row', { name: /^The shop, setting \d/ })).toBeVisible();
  const places = page.getByRole('table', { name: 'Scatter of setting by section and side' });
  expect(await places.getByRole('rowheader').allInnerTexts()).toEqual(['rear left', 'rear right']);
  const files = page.getByRole('link', { name: /^Download figures as CSV/ });
  const text = await (await request.get((await files.getAttribute('href')) ?? '')).text();
  expect(text).toContain('scatter of setting by section and side,rear left');
  expect(text).not.toContain('front left');
  expect(text).not.toMatch(COLLEAGUES);
  const picture = await request.get('/technicians/QUI/picture?of=asked&last=3&section=rear');
  expect(await picture.text()).toContain('The shop, setting');
});

test('the technician: the readings behind the figures are one click away', async ({ page }) => {
  await page.goto('/technicians/QUI');
  await page
    .getByRole('region', { name: 'The setups behind these figures' })
    .getByRole('rowheader')
    .first()
    .getByRole('link')
    .click();
  await expect(page).toHaveURL(/\/jobs\/.*#setup-/);
  await expect(page.locator(':target').getByRole('table', { name: /^Readings of setup/ })).toBeVisible();
});

test('the technician: the own figures as a file and a picture, and nobody else in any of them', async ({
  request,
}) => {
  const text = await (await request.get('/technicians/QUI/download')).text();
  const lines: Record<string, string>[] = parse(text, { columns: true });
  const setting = lines.find(({ figure }) => figure === 'scatter of setting again');
  expect(Number(setting?.low_95)).toBeLessThan(Number(setting?.value));
  expect(Number(setting?.high_95)).toBeGreaterThan(Number(setting?.value));
  expect(Number(setting?.shop_value)).toBeGreaterThan(0);
  expect(text).not.toMatch(COLLEAGUES);
  const picture = await request.get('/technicians/QUI/picture?of=setting');
  expect(picture.headers()['content-type']).toContain('image/svg+xml');
  expect(await picture.text()).not.toMatch(COLLEAGUES);
});

test('the technician: a habit’s page tells how to train it and the own evidence, never a colleague’s', async ({
  page,
}) => {
  await page.goto('/habits/low-hanger?technician=WIN');
  await expect(page.getByRole('heading', { name: 'How to train it' })).toBeVisible();
  await expect(page.getByRole('region', { name: 'QUI Not found' })).toContainText(/95\s% interval/);
  expect(await page.locator('main').innerText()).not.toMatch(COLLEAGUES);
  await expect(page.getByRole('link', { name: 'My hand' }).first()).toBeVisible();
});

test('the technician: a round stands open in the bay, where it stopped, with what two tablets said of one length', async ({
  page,
}) => {
  await page.goto('/bay');
  await page.getByRole('link', { name: 'Job K4461, before, round 1' }).click();
  // Read once on the left, which stays unseen until both sides were read twice.
  await expect(page.locator('#now h2')).toHaveText('Read D right');
  await expect(page.locator('main')).not.toContainText('368.3');
  await expect(page.locator('main')).toContainText(
    /D–E, reading 1: 1669\.8\smm stands, 1672\.1\smm was entered as well\./,
  );
  await page.getByText('This round so far').click();
  await expect(page.locator('main')).toContainText('A bent cross member is in the way.');
});
