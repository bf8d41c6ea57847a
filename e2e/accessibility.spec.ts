import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';
import { fileOf, measurementFile } from './measurement-file';
import { PAGES } from './pages';

/** Light and dark differ in their colours alone, which no size changes. A tablet has the pages of the desk. */
const SIGHTS = [
  ['light', 'desktop', 1280, 900],
  ['light', 'phone', 390, 844],
  ['dark', 'desktop', 1280, 900],
] as const;
const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** Pages of one job are looked at on their own. */
const LISTS = [...PAGES.map(([address]) => address).filter((one) => !one.startsWith('/jobs/')), '/nowhere'];

/** What a narrow screen can spoil: the rest is the same page as at the desk. */
const OF_SIZE = ['target-size', 'scrollable-region-focusable', 'label', 'link-name', 'button-name'];

/** Between them these hold every kind of part: colours are stated once for all pages, widths are tested below. */
const EVERY_PART = new Set([
  ...[
    '/',
    '/jobs',
    '/rates',
    '/what-if',
    '/habits',
    '/calibration',
    '/trials/new',
    '/settings/people',
    '/load',
  ],
]);

/** Rows of a table are alike from some row on. */
const FURTHER_ROWS = 'tbody tr:nth-child(n+4), li:nth-child(n+8)';

function builder(page: Page, scheme: 'light' | 'dark', device: 'desktop' | 'phone') {
  const axe = new AxeBuilder({ page }).exclude(FURTHER_ROWS);
  if (scheme === 'dark') return axe.withRules(['color-contrast', 'link-in-text-block']);
  return device === 'phone' ? axe.withRules(OF_SIZE) : axe.withTags(WCAG);
}

test('no barrier is found on any page: at the desk, on a phone, in the dark', async ({ page }) => {
  test.setTimeout(300_000);
  const addresses: string[] = [...LISTS];
  for (const list of ['/jobs?sort=job', '/technicians', '/gauges']) {
    await page.goto(list);
    const first = page.getByRole('rowheader').first().getByRole('link').first();
    addresses.push((await first.getAttribute('href')) ?? list);
  }
  for (const address of addresses) {
    await page.goto(address);
    await page.evaluate(() => document.querySelectorAll('details').forEach((one) => (one.open = true)));
    for (const [scheme, device, width, height] of SIGHTS) {
      if (width < 500 || scheme === 'dark') if (!EVERY_PART.has(address)) continue;
      await page.emulateMedia({ colorScheme: scheme });
      await page.setViewportSize({ width, height });
      const { violations } = await builder(page, scheme, device).analyze();
      const found = violations.map(({ id, nodes }) => [id, nodes.map((node) => node.html).slice(0, 3)]);
      expect(found, `${address}, ${scheme}, ${device}`).toEqual([]);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(wide, `${address}, ${device}`).toBeLessThanOrEqual(width);
    }
  }
});

test('a file that is checked and one that is refused have no barrier', async ({ page }) => {
  const good = measurementFile({ job: 'E2E-AXE' });
  for (const text of [good, good.replace(',before,', ',during,')]) {
    await page.goto('/load');
    await page.getByLabel('Measurement file').setInputFiles(fileOf('a.csv', text));
    await page.getByRole('button', { name: 'Check the file' }).click();
    await expect(page.getByRole('heading', { level: 1, name: /^The file/ })).toBeVisible();
    const { violations } = await new AxeBuilder({ page }).withTags(WCAG).analyze();
    expect(violations.map(({ id, nodes }) => [id, nodes.map((node) => node.html)])).toEqual([]);
  }
});

test('nothing but tables and the picture scrolls sideways at 320 pixels', async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 640 });
  for (const address of LISTS) {
    await page.goto(address);
    expect(await page.evaluate(() => document.documentElement.scrollWidth), address).toBeLessThanOrEqual(320);
  }
});

test('on a tablet all that is pressed is at least 44 pixels tall, but for links within a sentence', async ({
  page,
}) => {
  await page.setViewportSize({ width: 820, height: 1180 });
  for (const address of [...LISTS, '/jobs/K4105', '/technicians/QUI', '/gauges/CG4']) {
    await page.goto(address);
    await expect(page.locator('main[data-skeleton]')).toHaveCount(0);
    const small = await page.evaluate(() =>
      [
        ...document.querySelectorAll(
          'a, button, summary, select, label:has([type=checkbox]), input:not([type=hidden], [type=radio], label [type=checkbox])',
        ),
      ]
        .filter((one) => one.checkVisibility() && getComputedStyle(one).display !== 'inline')
        .filter((one) => one.getBoundingClientRect().height < 43.5 && one.getBoundingClientRect().top >= 0)
        .map((one) => one.outerHTML.slice(0, 120)),
    );
    expect(small, address).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth), address).toBeLessThanOrEqual(820);
  }
});
