import { expect, test } from '@playwright/test';
import { axe } from './axe';
import { SIGNED_IN } from './signed-in';

test('the gauge that fell off the bench shows its story: found out of limits, mended, verified', async ({
  page,
}) => {
  await page.goto('/gauges/CG4');
  await expect(page.getByText('Gauge CG4 is in service. It was last +0.05 mm off')).toBeVisible();
  await expect(
    page.getByRole('img', { name: /measured errors of gauge CG4.*14 Jul 2026: \+2\.10.*, failed/ }),
  ).toBeVisible();
  const table = page.getByRole('table', { name: 'Newest first' });
  await expect(table.getByRole('row', { name: /failed \+2\.10\smm.*rod bent/ })).toBeVisible();
});

test('the gauge whose verification was forgotten is marked', async ({ page }) => {
  await page.goto('/gauges');
  await expect(page.getByRole('row', { name: /TK1.*overdue/ })).toBeVisible();
  await page.goto('/gauges/TK1');
  await expect(page.getByText('overdue: verify it')).toBeVisible();
});

test('a technician reports a drop; the gauge is out of service and comes back by a verification that passes', async ({
  browser,
  baseURL,
}) => {
  const as = async (user: 'technician' | 'trainer') => {
    const context = await browser.newContext({
      ...(baseURL !== undefined && { baseURL }),
      storageState: SIGNED_IN[user],
    });
    return context.newPage();
  };
  const [hand, trainer] = [await as('technician'), await as('trainer')];
  await hand.goto('/gauges/CG5');
  await expect(hand.getByRole('heading', { name: 'Verify it' })).toHaveCount(0);
  await hand.getByLabel('What happened').fill('slid off the bench');
  await hand.getByRole('button', { name: /^Report CG5 dropped/ }).click();
  await expect(
    hand.getByText('Gauge CG5 is out of service until verified: it was reported dropped'),
  ).toBeVisible();

  await trainer.goto('/gauges');
  await expect(trainer.getByText('Out of service until verified: CG5. Do not hang it.')).toBeVisible();
  await trainer.goto('/gauges/CG5');
  await expect(trainer.getByRole('row', { name: /reported dropped.*QUI.*slid off the bench/ })).toBeVisible();
  const verify = async (readings: string) => {
    await trainer.getByLabel('Its length, mm').fill('1000');
    await trainer.getByLabel('What the gauge showed, mm').fill(readings);
    await trainer.getByRole('button', { name: 'Record the verification' }).click();
  };
  await verify('1000.1 999.9');
  await expect(trainer.getByText('Read 3 times at least')).toBeVisible();
  await verify('1001.4 1001.5 1001.6');
  await expect(trainer.getByText('It failed: the gauge is out of service')).toBeVisible();
  await trainer.getByText('It was only looked at').click();
  await trainer.getByRole('button', { name: 'Record the look' }).click();
  await expect(trainer.getByText('Out of service until verified').first()).toBeVisible();
  await verify('1000,1 999,9 1000,0 1000,1');
  await expect(trainer.getByText('It passed: the gauge is in service.')).toBeVisible();
  await expect(trainer.getByText('Gauge CG5 is in service.')).toBeVisible();
  const { violations } = await axe(trainer).analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes.map((node) => node.html)])).toEqual([]);
  await trainer.goto('/gauges');
  await expect(trainer.getByText('Do not hang it.')).toHaveCount(0);
});
