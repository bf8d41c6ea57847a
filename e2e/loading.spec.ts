import { expect, type Locator, type Page } from '@playwright/test';
import { fileOf, measurementFile } from './measurement-file';
import { SIGNED_IN } from './signed-in';
import { IN_SMALL_SHOP, test } from './small-shop';

test.use(IN_SMALL_SHOP);

async function check(page: Page, name: string, text: string | Buffer) {
  await page.goto('/load');
  await page.getByLabel('Measurement file').setInputFiles(fileOf(name, text));
  await page.getByRole('button', { name: 'Check the file' }).click();
}

test('a good file is shown, confirmed and stored; the same file again adds nothing', async ({ page }) => {
  const file = measurementFile({ job: 'E2E-GOOD' });
  await check(page, 'good.csv', file);
  await expect(page.getByRole('heading', { level: 1, name: 'The file can be loaded' })).toBeVisible();
  await expect(page.getByText('TST', { exact: true })).toBeVisible();
  const before = await page.request.get('/jobs/E2E-GOOD');
  expect(before.status()).toBe(404);

  await page.getByRole('button', { name: /^Load \d+ readings$/ }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'The file is loaded' })).toBeVisible();
  await page.goto('/jobs/E2E-GOOD');
  await expect(page.getByRole('heading', { level: 1, name: 'Job E2E-GOOD' })).toBeVisible();

  await check(page, 'good.csv', file);
  await page.getByRole('button', { name: /^Load \d+ readings$/ }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Nothing was added' })).toBeVisible();
});

test('a file as a spreadsheet exports it: semicolons, decimal commas, BOM and CRLF', async ({ page }) => {
  const file = `\uFEFF${measurementFile({ job: 'E2E-SHEET' }).replaceAll(',', ';').replaceAll('.5', ',5').replaceAll('\n', '\r\n')}`;
  await check(page, 'sheet.csv', file);
  await expect(page.getByRole('heading', { level: 1, name: 'The file can be loaded' })).toBeVisible();
  await expect(page.getByText('semicolons, decimal comma')).toBeVisible();
});

test('every fault of a bad file is named with its line, column and reason, and nothing is stored', async ({
  page,
}) => {
  const lines = measurementFile({ job: 'E2E-BAD' }).split('\n');
  const second = lines[1]?.replace(',before,', ',during,') ?? '';
  const third = lines[2]?.replace(/[\d.]+,?$/, '35o.1') ?? '';
  await check(page, 'bad.csv', [lines[0], second, third, ...lines.slice(3)].join('\n'));
  await expect(page.getByRole('heading', { level: 1, name: 'The file is refused' })).toBeVisible();
  const stage = page.getByRole('row').filter({ hasText: 'during' });
  await expect(stage.getByRole('rowheader')).toHaveText('2');
  await expect(stage).toContainText('stage');
  const value = page.getByRole('row').filter({ hasText: '35o.1' });
  await expect(value.getByRole('rowheader')).toHaveText('3');
  await expect(value).toContainText('value_mm');
  await expect(page.getByRole('button', { name: /^Load/ })).toHaveCount(0);
  expect((await page.request.get('/jobs/E2E-BAD')).status()).toBe(404);
});

for (const [what, bytes] of [
  ['empty', Buffer.alloc(0)],
  ['binary', Buffer.from(Array.from({ length: 4096 }, (_, index) => (index * 37) % 256))],
] as const) {
  test(`a file that is ${what} is refused with a sentence`, async ({ page }) => {
    await check(page, `${what}.csv`, bytes);
    await expect(page.getByRole('heading', { level: 1, name: 'The file is refused' })).toBeVisible();
    await expect(page.getByRole('row').nth(1)).toContainText(/\w+.*\./);
  });
}

test('an announced upload beyond the limit is refused before it is sent', async ({ baseURL, context }) => {
  const { request } = await import('node:http');
  const cookie = (await context.cookies()).map(({ name, value }) => `${name}=${value}`).join('; ');
  const { status, text } = await new Promise<{ status: number | undefined; text: string }>(
    (resolve, reject) => {
      const sent = request(new URL('/load/upload?name=large.csv', baseURL), {
        method: 'POST',
        headers: { 'Content-Length': String(300 * 1000 * 1000), Cookie: cookie },
      });
      sent.on('response', (response) => {
        let body = '';
        response.on('data', (piece: Buffer) => (body += piece.toString()));
        response.on('end', () => {
          resolve({ status: response.statusCode, text: body });
          sent.destroy();
        });
      });
      sent.on('error', reject);
      sent.flushHeaders();
    },
  );
  expect(status).toBe(413);
  expect(text).toContain('larger than 250 MB');
});

test('a dropped file is taken', async ({ page }) => {
  await page.goto('/load');
  const transfer = await page.evaluateHandle(
    (text) => {
      const data = new DataTransfer();
      data.items.add(new File([text], 'dropped.csv', { type: 'text/csv' }));
      return data;
    },
    measurementFile({ job: 'E2E-DROP' }),
  );
  await page.locator('form[action="/load/upload"]').dispatchEvent('drop', { dataTransfer: transfer });
  await expect(page.getByText('Chosen: dropped.csv')).toBeVisible();
  await page.getByRole('button', { name: 'Check the file' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'The file can be loaded' })).toBeVisible();
});

test('a large file is checked and stored behind the pages, which are answered meanwhile', async ({
  page,
}) => {
  const [header, ...lines] = measurementFile({ job: 'E2E-LARGE' }).trimEnd().split('\n');
  const repeats = Array.from({ length: 8000 }, (_, repeat) => lines.map((line) => `${line},${repeat + 1}`));
  await check(page, 'large.csv', [`${header},repeat`, ...repeats.flat()].join('\n'));
  const heading = page.getByRole('heading', { level: 1 });
  await expect(heading).toHaveText('The file is being checked');
  await expect(page.getByRole('progressbar', { name: 'Lines read' })).toBeVisible();
  const address = page.url();
  expect((await page.request.get('/jobs')).ok()).toBe(true);
  // The other page was answered before the file was read to its end.
  expect(await (await page.request.get(address)).text()).toContain('The file is being checked');

  await expect(heading).toHaveText('The file can be loaded', { timeout: 60_000 });
  await page.getByRole('button', { name: 'Load 64,000 readings' }).click();
  await expect(heading).toHaveText('The file is being stored');
  expect((await page.request.get('/jobs')).ok()).toBe(true);
  await expect(heading).toHaveText('The file is loaded', { timeout: 60_000 });
});

test('a mistake made on two thousand lines is one row that names them all', async ({ page }) => {
  const [header, line = ''] = measurementFile({ job: 'E2E-MANY' }).split('\n');
  const faulty = line.replace(',before,', ',during,');
  await check(page, 'many.csv', [header, ...Array.from({ length: 2000 }, () => faulty)].join('\n'));
  await expect(page.getByRole('heading', { level: 2, name: /^2,000\sfaults$/ })).toBeVisible();
  const row = page.getByRole('row').filter({ hasText: 'during' });
  await expect(row).toHaveCount(1);
  await expect(row.getByRole('rowheader')).toHaveText('2 to 2,001 (2,000 lines)');
});

test('by keyboard alone: choose, check, load, on to the jobs', async ({ page }) => {
  await page.goto('/load');
  const input = page.getByLabel('Measurement file');
  await input.focus();
  page.on(
    'filechooser',
    (chooser) => void chooser.setFiles(fileOf('keys.csv', measurementFile({ job: 'E2E-KEYS' }))),
  );
  await expect(async () => {
    await input.focus();
    await page.keyboard.press('Enter');
    await expect(page.getByText('Chosen: keys.csv')).toBeVisible({ timeout: 1000 });
  }).toPass();
  await page.keyboard.press('Tab');
  await expect(page.getByRole('button', { name: 'Check the file' })).toBeFocused();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: /^Load \d+ readings$/ }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'The file is loaded' })).toBeVisible();

  await tabTo(page, page.getByRole('link', { name: 'See the jobs' }));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'Jobs' })).toBeVisible();
});

test.describe('in the demo shop', () => {
  test.use({ storageState: SIGNED_IN.manager });

  test('by keyboard alone: from the jobs to a job and its next check', async ({ page }) => {
    await page.goto('/jobs');
    await tabTo(page, page.getByLabel('Job number or sheet'));
    await page.keyboard.type('K4105');
    await page.keyboard.press('Enter');
    await expect(page).toHaveURL(/search=K4105/);
    await tabTo(page, page.getByRole('link', { name: 'K4105', exact: true }));
    await page.keyboard.press('Enter');
    const next = page.locator('div').filter({ has: page.getByRole('heading', { name: 'Next check' }) });
    await tabTo(page, next.locator('summary').filter({ hasText: 'other check' }));
    await page.keyboard.press('Enter');
    await expect(next.getByRole('listitem').filter({ hasText: 'bits' }).first()).toBeVisible();
  });
});

test.describe('without scripts', () => {
  test.use({ javaScriptEnabled: false });

  test('a file is checked and loaded by plain forms', async ({ page }) => {
    await page.goto('/load');
    await page.getByRole('button', { name: 'Check the file' }).click();
    await expect(page.getByText('No file was chosen.')).toBeVisible();
    await check(page, 'plain.csv', measurementFile({ job: 'E2E-PLAIN' }));
    await expect(page.getByRole('heading', { level: 1, name: 'The file can be loaded' })).toBeVisible();
    await page.getByRole('button', { name: /^Load \d+ readings$/ }).click();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('The file is loaded');
  });
});

/** Presses Tab until this has the focus, as a person does who has no mouse. */
async function tabTo(page: Page, targets: Locator) {
  const target = targets.first();
  await target.waitFor();
  for (let pressed = 0; pressed < 60; pressed++) {
    if (await target.evaluate((one) => one === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  await expect(target).toBeFocused();
}
