import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';
import { fileOf, measurementFile } from './measurement-file';

const SIZES = { desktop: [1280, 900], tablet: [820, 1180], phone: [390, 844] } as const;
const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

const LISTS = [
  '/',
  '/jobs',
  '/technicians',
  '/training',
  '/gauges',
  '/calibration',
  '/load',
  '/method',
  '/cautions',
  '/settings',
  '/nowhere',
];

/** Light and dark differ in their colours alone: the rest is looked for once. */
function builder(page: Page, scheme: 'light' | 'dark') {
  const axe = new AxeBuilder({ page });
  return scheme === 'light' ? axe.withTags(WCAG) : axe.withRules(['color-contrast', 'link-in-text-block']);
}

for (const scheme of ['light', 'dark'] as const) {
  for (const [device, [width, height]] of Object.entries(SIZES)) {
    test(`no barrier is found on any page, ${scheme}, ${device}`, async ({ page }) => {
      test.setTimeout(180_000);
      await page.emulateMedia({ colorScheme: scheme });
      await page.setViewportSize({ width, height });
      const addresses = [...LISTS];
      for (const [list, index] of [
        ['/jobs?sort=job', 0],
        ['/technicians', 0],
        ['/gauges', 0],
      ] as const) {
        await page.goto(list);
        const first = page.getByRole('rowheader').nth(index).getByRole('link').first();
        addresses.push((await first.getAttribute('href')) ?? list);
      }
      for (const address of addresses) {
        await page.goto(address);
        await expect(page.locator('main[data-skeleton]')).toHaveCount(0);
        await page.evaluate(() => document.querySelectorAll('details').forEach((one) => (one.open = true)));
        const { violations } = await builder(page, scheme).analyze();
        expect(
          violations.map(({ id, nodes }) => [address, id, nodes.map((node) => node.html).slice(0, 3)]),
        ).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth), address).toBeLessThanOrEqual(
          width,
        );
      }
    });
  }
}

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
