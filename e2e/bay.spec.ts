import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test, type Page } from '@playwright/test';
import Database from 'better-sqlite3';
import { TEST_BUILD } from '@/lib/commands/checks.mjs';
import { freePort } from '@/lib/commands/serve.mjs';
import type { KeptEntry } from '@/lib/bay';
import { axe } from './axe';
import {
  begin,
  CLEARANCE,
  doNext,
  doUntil,
  expectedAt,
  line,
  now,
  ready,
  SMALL_SHEET,
  tabTo,
} from './bay-round';
import { NOBODY, SIGNED_IN } from './signed-in';
import { untilWell } from './until-well';

test.use({ storageState: SIGNED_IN.technician });

const entriesOf = async (page: Page, place: string): Promise<KeptEntry[]> => {
  const answer = await page.request.get(`${place}/entries?since=0`);
  return ((await answer.json()) as { entries: KeptEntry[] }).entries;
};

async function noBarrier(page: Page, scheme: 'light' | 'dark' = 'light'): Promise<void> {
  await page.emulateMedia({ colorScheme: scheme });
  const { violations } = await axe(page).analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
}

test('a whole round is measured by the keyboard alone, and what is wrong is caught at once', async ({
  page,
}) => {
  await page.goto('/bay');
  await tabTo(page, '#job');
  await page.keyboard.type('E2E-BAY-1');
  await tabTo(page, '#sheet');
  await page.keyboard.type(SMALL_SHEET);
  await tabTo(page, '#clearance');
  await page.keyboard.press('Enter');
  await ready(page);
  const place = new URL(page.url()).pathname;

  // A zero gauge reads 1.7 over: nothing tells so before both sides were read twice.
  await doUntil(page, /^Read/);
  await doUntil(page, /^Hang/);
  await doNext(page);
  for (let reading = 1; reading <= 4; reading++) {
    const main = await page.locator('main').innerText();
    expect(main).not.toContain('1.7');
    expect(main).not.toContain(String(expectedAt((await now(page).textContent()) ?? '')));
    await doNext(page, () => 1.7);
  }
  await expect(page.locator('main')).toContainText('+1.7');
  await noBarrier(page);

  // Of the first gauge in the heights the clearance was left out.
  await doUntil(page, /^Hang/);
  await doUntil(page, /^Read/);
  await doUntil(page, /^Hang/);
  await doNext(page);
  await doUntil(page, /^Hang/, () => -CLEARANCE);
  const caught = page.getByRole('region', { name: 'Last reading' });
  await expect(caught).toContainText('Likely the gauge');
  await expect(caught).toContainText('clearance left out (−100.0 mm)');
  await expect(caught).toContainText('Hang it again and read both sides.');
  await expect(caught).toContainText(/Rests on \d+ readings of this round/);
  await noBarrier(page, 'dark');
  await page.emulateMedia({ colorScheme: 'light' });
  await tabTo(page, '#kept-title ~ * button');
  await page.keyboard.press('Enter');
  await expect(page.locator('#now')).toContainText('Hang it again');
  await doNext(page);
  await doUntil(page, /^Hang/);
  await expect(caught).not.toContainText('Likely the gauge');

  // The last gauge is left out with a reason, and the round is finished.
  await tabTo(page, 'details:nth-of-type(3) summary');
  await page.keyboard.press('Enter');
  // Its form is drawn when it is first opened: whoever goes on before that is past it.
  await expect(page.locator('#leave-reason')).toBeVisible();
  await tabTo(page, '#leave-reason');
  await page.keyboard.type('cannot be reached');
  await page.keyboard.press('Enter');
  await doUntil(page, /^Finish/);
  await page.keyboard.press('Enter');
  await expect(now(page)).toHaveText('The round is finished');
  await expect(line(page)).toHaveAttribute('data-line', 'all-sent');

  const entries = await entriesOf(page, place);
  expect(entries.map(({ body }) => body.kind)).toContain('skip');
  expect(entries.at(-1)?.body.kind).toBe('finish');
  expect(entries.map(({ sequence }) => sequence)).toEqual(entries.map((_, at) => at + 1));
  expect(entries.filter(({ conflict }) => conflict !== null)).toEqual([]);
  const stored = await (await page.request.get('/jobs/download?job=E2E-BAY-1')).text();
  const readings = entries.filter(({ body }) => body.kind === 'read');
  expect(stored.trim().split('\n')).toHaveLength(readings.length + 1);
});

test.describe('with a server of its own', () => {
  const folder = mkdtempSync(join(tmpdir(), 'rehang-bay-'));
  test.afterAll(() => rmSync(folder, { recursive: true, force: true }));

  test('nothing is lost when the line is cut, the page reloaded and the server killed', async ({
    page,
    context,
  }, { config }) => {
    // The accounts of the shop that is tested, so that its sessions hold.
    const env: Record<string, string | undefined> = { ...process.env, ...config.webServer?.env };
    const shop = new Database((env.DATABASE_URL ?? '').slice('file:'.length), { readonly: true });
    shop.exec(`VACUUM INTO '${join(folder, 'shop.db')}'`);
    shop.close();
    const port = await freePort();
    const base = `http://localhost:${port}`;
    const start = () =>
      spawn(process.execPath, ['lib/commands/server.mjs'], {
        env: {
          ...env,
          NODE_ENV: 'production',
          DATABASE_URL: `file:${join(folder, 'shop.db')}`,
          REHANG_DIST_DIR: process.env.REHANG_DIST_DIR ?? TEST_BUILD,
          PORT: String(port),
        },
        stdio: 'ignore',
      });
    let server = start();
    try {
      await untilWell(page, base);
      await page.goto(`${base}/bay`);
      await page.getByLabel('Job').fill('E2E-BAY-2');
      await page.getByLabel('Sheet', { exact: true }).selectOption(SMALL_SHEET);
      await page.getByRole('button', { name: 'Begin' }).click();
      await expect(line(page)).toContainText('opens without a connection');
      const place = page.url();
      await doUntil(page, /^Read/);
      await doNext(page);

      await context.setOffline(true);
      await doNext(page);
      await expect(line(page)).toContainText(/No connection\. \d+ entries wait on this device/);
      await page.reload();
      await ready(page);
      await doNext(page);
      await expect(line(page)).toHaveAttribute('data-line', 'no-connection');
      await context.setOffline(false);
      await expect(line(page)).toHaveAttribute('data-line', 'all-sent');

      // Killed, not stopped: whatever it had not written is gone.
      server.kill('SIGKILL');
      await once(server, 'exit');
      const asked = await doNext(page);
      await expect(line(page)).toHaveAttribute('data-line', 'no-connection');
      await page.reload();
      await ready(page);
      await expect(now(page)).not.toHaveText(asked);
      await doUntil(page, /^Read/);
      // The analysis is there without a server, too.
      await doUntil(page, /^Hang/);
      server = start();
      await untilWell(page, base);
      await expect(line(page)).toHaveAttribute('data-line', 'all-sent', { timeout: 20_000 });

      const answer = await page.request.get(`${place}/entries?since=0`);
      const { entries } = (await answer.json()) as { entries: KeptEntry[] };
      expect(entries.map(({ sequence }) => sequence)).toEqual(entries.map((_, at) => at + 1));
      expect(new Set(entries.map(({ key }) => key)).size).toBe(entries.length);
      expect(entries.every(({ conflict }) => conflict === null)).toBe(true);
    } finally {
      server.kill('SIGKILL');
    }
  });
});

test('two tabs show the same, and a value that another device contradicts is shown and settled', async ({
  page,
  context,
  browser,
}) => {
  const place = await begin(page, 'E2E-BAY-3');
  const tab = await context.newPage();
  await tab.goto(place);
  await ready(tab);
  await page.bringToFront();
  await doUntil(page, /^Read/);
  await expect(now(tab)).toHaveText((await now(page).textContent()) ?? '');

  const colleague = await browser.newContext({ storageState: SIGNED_IN.trainer });
  const other = await colleague.newPage();
  await other.goto(new URL(place, page.url()).href);
  await ready(other);
  await expect(now(other)).toHaveText((await now(page).textContent()) ?? '');
  // Typed, but not entered, while the first device enters its own.
  const value = expectedAt((await now(other).textContent()) ?? '') + 4.5;
  await other.keyboard.type(String(value));
  const asked = await doNext(page);
  await expect(other.locator('progress').nth(1)).toHaveAttribute('value', '1');
  await expect(now(other)).toHaveText(asked);
  await other.keyboard.press('Enter');
  for (const one of [page, other, tab])
    await expect(one.getByRole('heading', { name: 'Two values for one reading' })).toBeVisible();
  await page.getByRole('radio', { name: /takes its place/ }).check();
  await page.getByLabel('Why').fill('read again');
  await page.getByRole('button', { name: 'Settle it' }).click();
  for (const one of [page, other])
    await expect(one.getByRole('heading', { name: 'Two values for one reading' })).toBeHidden();
  const stored = await (await page.request.get('/jobs/download?job=E2E-BAY-3')).text();
  expect(stored).toContain(`,${value},`);
  await colleague.close();
});

test('a digital gauge that types, and pastes, is read as it comes; what is far off is asked about', async ({
  page,
}) => {
  await page.setViewportSize({ width: 320, height: 640 });
  await begin(page, 'E2E-BAY-4');
  await doUntil(page, /^Read/);
  const first = (await now(page).textContent()) ?? '';
  // As fast as no hand types, and Tab at its end.
  await page.getByLabel(/^Reading/).evaluate(
    (field: HTMLInputElement, text) => {
      let at = performance.now();
      // The gauge's own pace, however long the page takes over a key.
      const press = (key: string) => {
        const event = new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true });
        Object.defineProperty(event, 'timeStamp', { value: (at += 5) });
        field.dispatchEvent(event);
      };
      for (const key of text) press(key);
      field.value = text;
      press('Tab');
    },
    `+${expectedAt(first)}.2mm`,
  );
  await expect(now(page)).not.toHaveText(first);

  const second = (await now(page).textContent()) ?? '';
  await page.keyboard.type(`${expectedAt(second)}0`);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('alert').filter({ hasText: 'far from what was set' })).toBeVisible();
  await expect(now(page)).toHaveText(second);
  await page.getByLabel(/^Reading/).fill('12 mm 13 mm');
  await page.keyboard.press('Enter');
  await expect(page.getByText('2 numbers for 1 reading')).toBeVisible();

  await page.getByRole('button', { name: 'Large type' }).click();
  await expect(now(page)).toHaveText(second.replace(/^Read (.*)$/, '$1. Read.'));
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
});

test('after signing out nothing of a round stays on the device', async ({ browser }) => {
  // A session of its own: ending it ends no other test's.
  const context = await browser.newContext({ storageState: NOBODY });
  const page = await context.newPage();
  await page.goto('/sign-in?to=/bay');
  await page.getByRole('button', { name: /Sign in as .*technician/ }).click();
  await begin(page, 'E2E-BAY-5');
  await expect(line(page)).toContainText('opens without a connection');
  const held = () =>
    page.evaluate(async () => {
      const open = indexedDB.open('rehang-bay');
      await new Promise((done) => (open.onsuccess = done));
      const asked = open.result.transaction('rounds').objectStore('rounds').count();
      await new Promise((done) => (asked.onsuccess = done));
      open.result.close();
      return { rounds: asked.result, copies: await caches.has('rehang-bay') };
    });
  expect(await held()).toEqual({ rounds: 1, copies: true });
  await page.getByRole('button', { name: 'Sign out' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Sign in');
  await expect.poll(held).toEqual({ rounds: 0, copies: false });
  await context.close();
});
