import { expect, test, type Page } from '@playwright/test';
import { axe } from './axe';
import { fileOf, measurementFile } from './measurement-file';
import { PAGES } from './pages';

const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What a narrow screen can spoil: the rest is the same page as at the desk. */
const OF_SIZE = ['target-size', 'scrollable-region-focusable', 'label', 'link-name', 'button-name'];

/** Between them these hold every kind of part: colours are stated once for all pages. */
const EVERY_PART = new Set([
  '/',
  '/jobs',
  '/rates',
  '/what-if',
  '/habits',
  '/calibration',
  '/trials/new',
  '/settings/people',
  '/load',
  '/jobs/K4105/evidence?round=after-1',
]);

/** Rows of a table are alike from some row on. */
const FURTHER_ROWS = 'tbody tr:nth-child(n+4), li:nth-child(n+8)';

/** Pages of one thing that is in the demo shop. */
const OF_ONE = ['/jobs/K4105', '/technicians/QUI', '/gauges/CG4', '/nowhere'];
const ADDRESSES = [...new Set<string>([...PAGES.map(([address]) => address), ...OF_ONE])];

async function barriers(page: Page, rules: string[] | null): Promise<unknown[]> {
  const builder = axe(page).exclude(FURTHER_ROWS);
  const { violations } = await (rules === null ? builder.withTags(WCAG) : builder.withRules(rules)).analyze();
  return violations.map(({ id, nodes }) => [id, nodes.map((node) => node.html).slice(0, 3)]);
}

/** What is pressed and is less than 44 pixels tall, but for links within a sentence. */
const smallTargets = (page: Page) =>
  page.evaluate(() =>
    [
      ...document.querySelectorAll(
        'a, button, summary, select, label:has([type=checkbox]), input:not([type=hidden], [type=radio], label [type=checkbox])',
      ),
    ]
      .filter((one) => one.checkVisibility() && getComputedStyle(one).display !== 'inline')
      .filter((one) => one.getBoundingClientRect().height < 43.5 && one.getBoundingClientRect().top >= 0)
      .map((one) => one.outerHTML.slice(0, 120)),
  );

/** One visit of each page serves all that is asked of every page: a visit costs more than a look. */
test.describe('every page', () => {
  test.describe.configure({ mode: 'parallel' });
  for (const address of ADDRESSES)
    test(`${address} has no barrier, fits every screen and writes no error`, async ({ page }) => {
      const errors: string[] = [];
      page.on('console', (message) => {
        if (message.type() === 'error') errors.push(message.text());
      });
      page.on('pageerror', (error) => errors.push(error.message));
      const width = () => page.evaluate(() => document.documentElement.scrollWidth);

      await page.setViewportSize({ width: 820, height: 1180 });
      await page.goto(address);
      expect(await smallTargets(page), 'tablet').toEqual([]);
      expect(await width(), 'tablet').toBeLessThanOrEqual(820);

      await page.evaluate(() => document.querySelectorAll('details').forEach((one) => (one.open = true)));
      await page.setViewportSize({ width: 1280, height: 900 });
      expect(await barriers(page, null), 'desk').toEqual([]);
      expect(await width(), 'desk').toBeLessThanOrEqual(1280);

      await page.setViewportSize({ width: 390, height: 844 });
      if (EVERY_PART.has(address)) expect(await barriers(page, OF_SIZE), 'phone').toEqual([]);
      expect(await width(), 'phone').toBeLessThanOrEqual(390);
      await page.evaluate(() => document.querySelectorAll('details').forEach((one) => (one.open = false)));
      await page.setViewportSize({ width: 320, height: 640 });
      // The job’s picture and wide tables scroll within their own frame.
      expect(await width(), 'narrow').toBeLessThanOrEqual(320);

      if (EVERY_PART.has(address)) {
        await page.emulateMedia({ colorScheme: 'dark' });
        await page.setViewportSize({ width: 1280, height: 900 });
        expect(await barriers(page, ['color-contrast', 'link-in-text-block']), 'dark').toEqual([]);
      }
      // The page that is not there is answered as such, which the console tells.
      expect(errors.filter((one) => address !== '/nowhere' || !one.includes('404'))).toEqual([]);
    });
});

test('a file that is checked and one that is refused have no barrier', async ({ page }) => {
  const good = measurementFile({ job: 'E2E-AXE' });
  for (const text of [good, good.replace(',before,', ',during,')]) {
    await page.goto('/load');
    await page.getByLabel('Measurement file').setInputFiles(fileOf('a.csv', text));
    await page.getByRole('button', { name: 'Check the file' }).click();
    await expect(page.getByRole('heading', { level: 1, name: /^The file/ })).toBeVisible();
    expect(await barriers(page, null)).toEqual([]);
  }
});
