import { readFile } from 'node:fs/promises';
import { expect, test } from '@playwright/test';

test('what a filter shows can be downloaded, and loading it again adds nothing', async ({ page }) => {
  await page.goto('/jobs?outcome=wrong&sort=job');
  const technician = await page.getByLabel('Technician').locator('option').nth(1).innerText();
  await page.goto(`/jobs?outcome=wrong&technician=${technician}`);
  const download = page.waitForEvent('download');
  await page.getByRole('link', { name: /^Download the readings of/ }).click();
  const path = await (await download).path();
  const lines = (await readFile(path, 'utf8')).trimEnd().split('\r\n');
  const jobs = new Set(lines.slice(1).map((line) => line.split(',')[0]));
  await expect(page.getByText(new RegExp(`^${jobs.size} of [\\d,]+\\s+jobs fit`))).toBeVisible();

  await page.goto('/load');
  await page.getByLabel('Measurement file').setInputFiles(path);
  await page.getByRole('button', { name: 'Check the file' }).click();
  await page.getByRole('button', { name: /^Load [\d,]+ readings$/ }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Nothing was added' })).toBeVisible();
  await expect(page.getByText(`All ${(lines.length - 1).toLocaleString('en-GB')}`)).toBeVisible();
});

test('one job can be downloaded by itself', async ({ page }) => {
  await page.goto('/jobs?sort=job');
  const job = await page.getByRole('table').locator('tbody').getByRole('rowheader').first().innerText();
  await page.goto(`/jobs/${job}`);
  const download = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Download this job’s readings' }).click();
  const lines = (await readFile(await (await download).path(), 'utf8')).trimEnd().split('\r\n');
  expect(lines[0]).toMatch(/^job,sheet,stage/);
  expect(lines.length).toBeGreaterThan(10);
  expect(lines.slice(1).every((line) => line.startsWith(`${job},`))).toBe(true);
});
