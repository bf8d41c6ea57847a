import { expect, test, type Page } from '@playwright/test';
import { axe } from './axe';
import { SIGNED_IN } from './signed-in';

test.use({ storageState: SIGNED_IN.trainer });

const POINTS = [
  ['Sill left', '312.4'],
  ['Sill right', '313.6'],
] as const;
/** Errors of reading, in the order of entering; invented. */
const NOISE = [0.2, -0.1, 0.4, 0.3, -0.3, -0.2, 0.1, 0.3];
const HERE: Record<string, number> = { 'Sill left': 313.1, 'Sill right': 311.8 };

/** What is asked for in large letters on the page that takes readings. */
const asked = (page: Page, what: string) =>
  page.locator('dl div', { has: page.getByText(what, { exact: true }) }).locator('dd');

/** Enters what is asked for until nothing is. */
async function readAll(page: Page, beforeEach?: () => Promise<void>) {
  const field = page.getByLabel('Reading, mm', { exact: true });
  for (const noise of NOISE) {
    await beforeEach?.();
    const place = await page.getByRole('heading', { level: 2 }).innerText();
    const point = (await asked(page, 'Point').innerText()).trim();
    const value = (HERE[point] ?? 0) + noise;
    await field.fill(value.toFixed(1).replace('.', ','));
    await field.press('Enter');
    await expect(page.getByText(`${place.replace(/ of \d+$/, '')} is kept.`)).toBeVisible();
  }
  await expect(page.getByRole('heading', { name: 'All readings are in' })).toBeVisible();
}

test('a trial is planned by its power, read blind by number and Enter alone, and analysed with intervals', async ({
  page,
  browser,
  baseURL,
}) => {
  await page.goto('/trials');
  await page.getByRole('link', { name: 'Plan a trial' }).first().click();
  await page.getByLabel('Name of the trial').fill('Two hands');
  await page.getByRole('button', { name: 'Work out what it finds' }).click();
  await expect(page.getByText('A bias shows between people: choose two at least.')).toBeVisible();
  for (const [index, [name, value]] of POINTS.entries()) {
    await page.getByLabel(`Name of point ${index + 1}`).fill(name);
    await page.getByLabel(`Sheet value in mm of point ${index + 1}`).fill(value);
  }
  for (const code of ['FEL', 'QUI']) await page.getByRole('checkbox', { name: code }).check();
  await page.getByLabel('Hangings of each person at each point').fill('2');
  await page.getByRole('button', { name: 'Work out what it finds' }).click();
  const found = page.getByRole('region', { name: 'What this plan finds' });
  await expect(found).toContainText(/it finds what is asked for in \d+\s% of such trials/);
  await expect(found).toContainText('find a bias of 1 mm between two of them');
  await found.getByRole('button', { name: 'Create the trial' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Two hands' })).toBeVisible();
  await expect(page.getByText('planned', { exact: true })).toBeVisible();
  await expect(page.getByText(/a complete hanging of each person at each point: 0 of 4/)).toBeVisible();
  const place = new URL(page.url()).pathname;

  const hand = await browser.newContext({
    ...(baseURL !== undefined && { baseURL }),
    storageState: SIGNED_IN.technician,
    javaScriptEnabled: false,
  });
  const tablet = await hand.newPage();
  await tablet.goto('/trials');
  const row = tablet.getByRole('row', { name: /Two hands/ });
  await row.getByRole('link', { name: 'Enter readings' }).click();
  await readAll(tablet, async () => {
    await expect(asked(tablet, 'Who reads')).toHaveText('QUI');
    // Neither the sheet nor what was read before: no length stands on the page at all.
    expect(await tablet.locator('body').innerText()).not.toMatch(/31[0-9][.,]\d/);
  });
  expect((await hand.request.get(`${place}/figures`)).status()).toBe(409);
  await tablet.goto(place);
  await expect(tablet.getByRole('main')).not.toContainText(/FEL|31[0-9]\.\d/);
  expect((await hand.request.get(`${place}/readings`)).status()).toBe(403);

  const sheet = await page.request.get(`${place}/readings`);
  const others = (await sheet.text()).split('\r\n').find((line) => line.split(',')[1] === 'FEL');
  const run = others?.split(',')[0] ?? '';
  await hand.request.post(`${place}/run/enter`, { form: { run, repeat: '1', value: '300' } });
  await tablet.goto(`${place}/run`);
  await expect(tablet.getByText(`You have no run ${run} in this trial.`)).toBeVisible();
  await hand.close();

  await page.goto(`${place}/run`);
  await expect(asked(page, 'Who reads')).toHaveText('FEL');
  await readAll(page);
  await page.getByText('Correct a reading').click();
  await page.getByLabel('What was read, mm').fill('313.3');
  await page.getByLabel('Why (digits exchanged').fill('misread');
  await page.getByRole('button', { name: 'Correct it' }).click();
  await expect(page.getByText(/is corrected\.$/)).toBeVisible();

  await page.goto(place);
  const shows = page.getByRole('region', { name: 'What it shows' });
  await expect(shows).toContainText(
    /Reading again, gauge untouched, scatters \d\.\d\d\smm \(\d\.\d\d to \d\.\d\d\)\./,
  );
  await expect(shows.getByRole('img', { name: /^Means of 8 hangings/ })).toBeVisible();
  await expect(
    page.getByRole('table', { name: 'Scatter by its source, as an sd' }).getByRole('row', {
      name: /Reading again.* \d\.\d\d to \d\.\d\d/,
    }),
  ).toBeVisible();
  await expect(page.getByRole('table', { name: /Scatter as an sd in mm/ })).toBeVisible();
  const { violations } = await axe(page).analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes.map((node) => node.html)])).toEqual([]);

  await page.getByRole('button', { name: /^Close the trial/ }).click();
  await expect(page.getByText('The trial is closed.')).toBeVisible();
  await expect(page.getByRole('link', { name: 'Enter readings' })).toHaveCount(0);
  expect((await sheetLines(page, place)).length).toBe(17);

  // Closed, it shows the technician the own part; with two in it all together would be the other's.
  const after = await browser.newContext({
    ...(baseURL !== undefined && { baseURL }),
    storageState: SIGNED_IN.technician,
  });
  const own = await after.newPage();
  await own.goto(place);
  const scatter = own.getByRole('table', { name: 'Scatter, standard deviations' });
  await expect(scatter.getByRole('row', { name: /^Setting and hanging again/ })).toBeVisible();
  await expect(scatter.getByRole('row', { name: /^Reading again \d\.\d\d \d\.\d\d to \d/ })).toBeVisible();
  await expect(own.getByText(/would be a colleague’s/)).toBeVisible();
  await expect(own.getByRole('img', { name: /^Means of 4 hangings/ })).toBeVisible();
  await expect(own.getByRole('main')).not.toContainText('FEL');
  const figures = await (await after.request.get(`${place}/figures`)).text();
  expect(figures).toContain('setting and hanging again,own');
  expect(figures).not.toMatch(/FEL|all together/);
  expect(await (await after.request.get(`${place}/picture`)).text()).not.toContain('FEL');
  await after.close();
});

const sheetLines = async (page: Page, place: string) =>
  (await (await page.request.get(`${place}/readings`)).text()).trim().split('\r\n');

test('a trial after a training is held against the one before it', async ({ page }) => {
  const places = [];
  for (const [name, scatter] of [
    ['Before', 1],
    ['After', 0.25],
  ] as const) {
    const form = {
      ...{ name, asked: 'training', training: '50', setups: '3', readings: '1' },
      ...{ 'point 1': 'Apron', 'value 1': '400', 'point 2': 'Rail', 'value 2': '500' },
      'who QUI': 'yes',
    };
    const made = await page.request.post('/trials/new/create', { form, maxRedirects: 0 });
    const place = made.headers().location ?? '';
    places.push(place);
    const lines = await sheetLines(page, place);
    for (const [index, line] of lines.slice(1).entries()) {
      const [run = '', , , , repeat = '', sheet = ''] = line.split(',');
      const value = String(Number(sheet) + scatter * ([2, -1.5, 0.3, -2, 1, 1.6][index] ?? 0));
      await page.request.post(`${place}/run/enter`, { form: { run, repeat, value } });
    }
  }
  await page.goto(places[1] ?? '');
  await page.getByLabel('Earlier trial').selectOption('Before');
  await page.getByRole('button', { name: 'Compare' }).click();
  await expect(
    page.getByText(
      /Hanging and reading of QUI scatters \d\.\d\d times as much as before \(\d\.\d\d to \d\.\d\d\)/,
    ),
  ).toBeVisible();
  await page.getByRole('link', { name: 'Plan the same again' }).click();
  await expect(page.getByLabel('Name of point 2')).toHaveValue('Rail');
});
