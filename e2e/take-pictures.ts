/**
 * Takes the pictures of the README from a running demo shop:
 * `REHANG_BROWSER=/usr/bin/chromium npx tsx e2e/take-pictures.ts http://localhost:3000`
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from '@playwright/test';

const [shop = 'http://localhost:3000'] = process.argv.slice(2);
const folder = join(import.meta.dirname, 'pictures');

/** Name, address, width, height, light or dark, and the part of the page to bring to the top. */
const PICTURES = [
  ['overview', '/', 1280, 900, 'light', null],
  ['months', '/', 1280, 620, 'light', '#months'],
  ['jobs', '/jobs', 1280, 800, 'light', null],
  ['job', '/jobs/K4105', 1280, 1180, 'light', '#picture'],
  ['job-phone', '/jobs/K4105?show=after-1', 390, 844, 'dark', '#picture'],
  ['technician', '/technicians/QUI', 1280, 900, 'dark', null],
  ['training', '/training', 820, 1000, 'light', null],
  ['rates', '/rates', 1280, 1000, 'light', null],
  ['habits', '/habits', 1280, 900, 'light', null],
  ['what-if', '/what-if', 1280, 900, 'dark', null],
  ['bay', '/bay/1', 390, 1180, 'light', null],
  ['load', '/load', 1024, 700, 'light', null],
] as const;

mkdirSync(folder, { recursive: true });
const executablePath = process.env.REHANG_BROWSER;
const browser = await chromium.launch({
  ...(executablePath !== undefined && { executablePath }),
  args: ['--no-sandbox', '--disable-gpu', '--no-first-run'],
});
// The manager of the demo shop.
const entrance = await browser.newPage();
await entrance.goto(new URL('/sign-in', shop).href);
await entrance.getByRole('button', { name: /Sign in as the manager/ }).click();
await entrance.waitForURL(new URL('/', shop).href);
const storageState = await entrance.context().storageState();
for (const [name, address, width, height, colorScheme, part] of PICTURES) {
  const page = await browser.newPage({
    viewport: { width, height },
    colorScheme,
    locale: 'en-GB',
    storageState,
  });
  await page.goto(new URL(address, shop).href, { waitUntil: 'networkidle' });
  if (part !== null)
    await page.locator(part).evaluate((element) => element.scrollIntoView({ block: 'start' }));
  await page.screenshot({ path: join(folder, `${name}.png`) });
  await page.close();
}
await browser.close();
