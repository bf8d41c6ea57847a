import { expect, type Page } from '@playwright/test';
import { axe } from './axe';
import { fileOf, measurementFile } from './measurement-file';
import { SIGNED_IN } from './signed-in';
import { IN_SMALL_SHOP, test } from './small-shop';

test.use({ storageState: SIGNED_IN.trainer });

/** Types one row field by field, as a keypad does: Enter goes on; of a choice its first letters, `tick` is a blank. */
async function typeRow(page: Page, cells: readonly string[]) {
  for (const cell of cells) {
    if (cell === 'tick') await page.keyboard.press('Space');
    else if (cell !== '') await page.keyboard.type(cell);
    await page.keyboard.press('Enter');
  }
}

//            letter, side, description, feature, section, station, height, half width, zero, tolerance, centre pin
const ROWS = [
  ['A', '', 'Rail, tip', 'hole', 'front', '0', '240', '400', '', '', ''],
  ['K', '', 'Floor rail', 'slot', 'center', '1000', '240', '400', 'tick', '', ''],
  ['N', '', 'Floor rail', 'slot', 'center', '2500', '240', '400', 'tick', '', ''],
] as const;

test('a sheet is entered by the keyboard, a length that cannot fit is named, and a correction keeps its history', async ({
  page,
}) => {
  await page.goto('/sheets');
  await page.getByRole('link', { name: 'Enter a sheet' }).click();
  await page.getByLabel('Name of the sheet').fill('E2E, typed');
  await page.getByLabel('Letter, point row 1').focus();
  for (const row of ROWS) await typeRow(page, row);
  await expect(page.getByLabel('Letter, point row 4')).toBeFocused();
  await expect(page.getByRole('img', { name: /K, both, zero station: station 1000\.0\smm/ })).toBeVisible();

  await page.getByLabel('From, length row 1').focus();
  await typeRow(page, ['K', 'N', 'straight', '1350', '3']);
  const row = page.getByRole('row', { name: /^1 .*does not fit/ });
  await expect(row).toBeVisible();
  await expect(
    page.getByText(/Length K-N cannot be 1350\.0\smm: its points are 1500\.0\smm apart/),
  ).toBeVisible();
  await typeRow(page, ['K', 'N', 'straight', '1700', '3']);
  await expect(page.getByText(/fits as the diagonal one/)).toBeVisible();
  const { violations } = await axe(page).analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html).slice(0, 3)])).toEqual([]);

  await page.getByRole('button', { name: 'Save the sheet' }).click();
  await expect(page.getByText(/Nothing is kept yet: 2 doubts/)).toBeVisible();
  await page.getByLabel(/^Sheet value.*length row 1$/).fill('1500');
  await page.getByLabel('Straight or diagonal, length row 2').selectOption('diagonal');
  await expect(page.getByText(/Length K-N cannot be/)).toHaveCount(0);
  await page.getByRole('button', { name: 'Save the sheet' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Sheet E2E, typed' })).toBeVisible();
  await expect(page.getByRole('row', { name: /K–N 1700\.0.*diagonal, fits/ })).toBeVisible();
  await expect(page.getByRole('row', { name: /^K both Floor rail slot center, zero station/ })).toBeVisible();

  await page.getByRole('link', { name: 'Correct it' }).click();
  await page.getByLabel(/^Height.*point row 1$/).fill('241,5');
  await page.getByLabel('Why it is corrected').fill('misread on the maker’s sheet');
  await page.getByRole('button', { name: 'Correct the sheet' }).click();
  const history = page.getByRole('region', { name: 'History' });
  await expect(history).toContainText('Height A, left: sheet value from 240.0 mm to 241.5 mm.');
  await expect(history).toContainText('misread on the maker’s sheet');
  await expect(history).toContainText('Entered by hand. HOL,');
});

test('rows of a spreadsheet are pasted, and a sheet shown in inches and sent back has not changed', async ({
  page,
  context,
  baseURL,
}) => {
  await context.addCookies([{ name: 'units', value: 'in', url: baseURL ?? '' }]);
  await page.goto('/sheets/Coupe/correct');
  await expect(page.getByLabel(/^Station, in, point row 3$/)).toHaveValue('42.4409');
  await page.getByLabel('Why it is corrected').fill('nothing');
  await page.getByRole('button', { name: 'Correct the sheet' }).click();
  await expect(page.getByText('Sheet Coupe stands so already.')).toBeVisible();

  await page.goto('/sheets/new/enter');
  // The page is read before its script listens: until then a paste into a list of choices does nothing.
  await expect(async () => {
    await page.getByLabel('Letter, point row 1').evaluate((cell) => {
      const data = new DataTransfer();
      data.setData(
        'text/plain',
        'K\tbeide\tRail\tBohrung\tMitte\t42 1/2\nN\tleft\tRail\tslot\tcenter\t98.5\n',
      );
      cell.dispatchEvent(
        new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }),
      );
    });
    await expect(page.getByLabel('Feature, point row 1')).toHaveValue('hole', { timeout: 500 });
  }).toPass();
  await expect(page.getByLabel('Side, point row 2')).toHaveValue('L');
  await expect(page.getByRole('img', { name: /K, both: station 42\.500 in/ })).toBeVisible();
});

test.describe('in a small shop', () => {
  test.use(IN_SMALL_SHOP);

  test('the deviations of a job follow the correction of its sheet', async ({ page }) => {
    const text = measurementFile({ job: 'E2E-SHEET' }).replaceAll('E2E-S1', 'E2E measured');
    await page.goto('/load');
    await page.getByLabel('Measurement file').setInputFiles(fileOf('sheet.csv', text));
    await page.getByRole('button', { name: 'Check the file' }).click();
    await page.getByRole('button', { name: /^Load \d+ readings$/ }).click();
    await page.goto('/jobs/E2E-SHEET');
    await expect(page.getByRole('main')).not.toContainText('+2.0');
    await page.getByRole('link', { name: 'E2E measured' }).click();
    await page.getByRole('link', { name: 'Correct it' }).click();
    await page.getByLabel(/^Height.*point row 1$/).fill('248.5');
    await page.getByLabel('Why it is corrected').fill('another issue of the sheet');
    await page.getByRole('button', { name: 'Correct the sheet' }).click();
    await expect(page.getByText(/The deviations of 1 job are worked out anew/)).toBeVisible();
    await page.goto('/jobs/E2E-SHEET');
    await expect(page.getByRole('main')).toContainText('+2.0');
  });
});

test.describe('without scripts', () => {
  test.use({ javaScriptEnabled: false });

  test('a sheet is checked, mended and kept, retired, and loaded again from its own file', async ({
    page,
  }) => {
    await page.goto('/sheets/new/enter');
    await page.getByLabel('Name of the sheet').fill('E2E, plain');
    for (const [index, station] of ['1000', '2500'].entries()) {
      const at = (head: string) => page.getByLabel(new RegExp(`^${head}.*point row ${index + 1}$`));
      await at('Letter').fill('KN'.charAt(index));
      await at('Section').selectOption('center');
      await at('Station').fill(station);
      await at('Height').fill('240');
      if (index === 0) await at('Zero').check();
    }
    await page.getByRole('button', { name: 'Check' }).click();
    await expect(page.getByText(/One zero station alone is marked \(K\)/)).toBeVisible();
    await expect(page.getByLabel('Name of the sheet')).toHaveValue('E2E, plain');
    await page.getByLabel('Zero, point row 2').check();
    await page.getByRole('button', { name: 'Save the sheet' }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'Sheet E2E, plain' })).toBeVisible();
    await page.getByRole('button', { name: 'Retire the sheet' }).click();
    await expect(page.getByText('The sheet is retired.')).toBeVisible();

    const file = await (await page.request.get('/sheets/E2E%2C%20plain/download')).text();
    await page.goto('/sheets');
    await expect(page.getByRole('region', { name: 'Retired' })).toContainText('E2E, plain');
    const load = async (text: string) => {
      await page.goto('/sheets');
      await page.getByLabel(/^Sheet file/).setInputFiles(fileOf('E2E, loaded.csv', text));
      await page.getByRole('button', { name: 'Read the file' }).click();
    };
    await load(file.replace(',1000,', ',1OOO,'));
    await expect(page.getByRole('row', { name: /^2 station_mm "1OOO" is not a number/ })).toBeVisible();
    await load(file);
    await page.getByRole('button', { name: 'Save the sheet' }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'Sheet E2E, loaded' })).toBeVisible();
    expect(await (await page.request.get('/sheets/E2E%2C%20loaded/download')).text()).toBe(file);
  });
});

test('a technician sees a sheet, begins a round with it, and finds nothing to change it by', async ({
  browser,
  baseURL,
}) => {
  const hand = await browser.newContext({
    ...(baseURL !== undefined && { baseURL }),
    storageState: SIGNED_IN.technician,
  });
  const tablet = await hand.newPage();
  await tablet.goto('/sheets/Coupe');
  await expect(tablet.getByRole('img', { name: /^The sheet as a vehicle/ })).toBeVisible();
  await expect(tablet.getByRole('link', { name: 'Correct it' })).toHaveCount(0);
  await expect(tablet.getByRole('button', { name: /Retire|Copy/ })).toHaveCount(0);
  await tablet.getByRole('link', { name: 'Begin a round with it' }).click();
  await expect(tablet.getByLabel('Sheet', { exact: true })).toHaveValue('Coupe');
  await tablet.getByRole('link', { name: 'Sheets' }).last().click();
  await expect(tablet.getByRole('heading', { level: 1, name: 'Sheets' })).toBeVisible();
});
