import { expect, test } from '@playwright/test';

test('the manager: the rate with its uncertainty, what needs attention, and on to a round', async ({
  page,
}) => {
  await page.goto('/');
  await expect(page.getByText(/95 % interval \d+/).first()).toBeVisible();
  await expect(page.getByRole('img', { name: /^Right first time by month from/ })).toBeVisible();
  await page.getByText('The months as a table').click();
  await expect(page.getByRole('table', { name: 'Right first time by month' })).toBeVisible();

  const attention = page.getByRole('region', { name: 'What needs attention now' });
  await expect(attention.getByRole('heading', { level: 3 }).first()).toBeVisible();
  await attention
    .getByRole('heading', { name: /Rounds to settle/ })
    .locator('xpath=following-sibling::ul')
    .getByRole('link')
    .first()
    .click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(/^Job /);
  await expect(page.getByRole('heading', { name: 'Next check' }).first()).toBeVisible();
});

test('the manager: months one by one, by keyboard', async ({ page }) => {
  await page.goto('/');
  await page.getByRole('button', { name: 'Read it month by month' }).focus();
  await page.keyboard.press('Enter');
  const chart = page.locator('.recharts-surface').first();
  await chart.focus();
  await page.keyboard.press('ArrowRight');
  await expect(page.locator('.recharts-wrapper').getByText(/^\d+\s%, interval/)).toBeVisible();
});

test('rates are listed by name, not by rate', async ({ page }) => {
  await page.goto('/');
  const names = await page
    .getByRole('table', { name: /^By technician/ })
    .getByRole('rowheader')
    .allInnerTexts();
  expect(names.length).toBeGreaterThan(3);
  expect(names).toEqual([...names].sort());
});

test('light or dark is kept from page to page', async ({ page }) => {
  await page.emulateMedia({ colorScheme: 'light' });
  await page.goto('/gauges');
  await page.getByRole('button', { name: 'Dark' }).click();
  await expect(page).toHaveURL(/\/gauges$/);
  await expect(page.getByRole('button', { name: 'Dark' })).toHaveAttribute('aria-pressed', 'true');
  await page.goto('/jobs');
  expect(await page.evaluate(() => getComputedStyle(document.documentElement).colorScheme)).toBe('dark');
  await page.getByRole('button', { name: 'Device' }).click();
  await expect(page.getByRole('button', { name: 'Device' })).toHaveAttribute('aria-pressed', 'true');
  expect(await page.evaluate(() => getComputedStyle(document.documentElement).colorScheme)).toBe(
    'light dark',
  );
});

test('by keyboard alone: past the head to the page, and along the pages', async ({ page }) => {
  await page.goto('/jobs');
  await page.keyboard.press('Tab');
  await expect(page.getByRole('link', { name: 'Skip to the page' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.locator('#main')).toBeFocused();
  await page.keyboard.press('Tab');
  await expect(page.getByRole('link', { name: /^Download the readings/ })).toBeFocused();
  await page
    .getByRole('navigation', { name: 'Pages', exact: true })
    .getByRole('link', { name: 'Gauges' })
    .focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'Gauges' })).toBeVisible();
});
