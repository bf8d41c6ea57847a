import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { freePort } from '../lib/commands/serve.mjs';
import { NOBODY } from './signed-in';
import { untilWell } from './until-well';

test.use({ storageState: NOBODY });

test('a shop of one’s own begins with its manager, by the printed link alone, once', async ({ page }) => {
  const folder = mkdtempSync(join(tmpdir(), 'rehang-first-'));
  const port = await freePort();
  const env = {
    ...process.env,
    DATABASE_URL: `file:${join(folder, 'own.db')}`,
    REHANG_SECRET: 'of this one test, and of nothing else at all',
    REHANG_DIST_DIR: process.env.REHANG_DIST_DIR ?? '.next-test',
    PORT: String(port),
    NODE_ENV: 'production' as const,
  };
  const printed = execFileSync(
    process.execPath,
    ['lib/commands/begin.mjs', 'lib/commands/prepare.ts', '--own'],
    {
      env,
      encoding: 'utf8',
    },
  );
  const key = /\/welcome\?key=\S+/.exec(printed)?.[0] ?? '';
  const server = spawn(process.execPath, ['lib/commands/server.mjs'], { env, stdio: 'ignore' });
  const ended = once(server, 'exit');
  const base = `http://localhost:${port}`;
  try {
    await untilWell(page, base);
    await page.goto(`${base}/jobs`);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Nobody can sign in yet');
    await page.goto(`${base}${key}`);
    await page.getByLabel('Name of the shop').fill('Own Quay');
    await page.getByLabel(/^Time zone/).fill('Europe/Zurich');
    await page.getByLabel('Your name').fill('Mara');
    await page.getByLabel(/^Your code/).fill('MAR');
    await page.getByLabel(/^Sign-in name/).fill('mara');
    await page.getByLabel(/^Password/).fill('eleven holes in the rail');
    await page.getByRole('button', { name: 'Set up the shop' }).click();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Own Quay');
    await page.goto(`${base}${key}`);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Own Quay');

    await page.goto(`${base}/settings`);
    await page.getByLabel(/^Time zone/).fill('Europe/Nowhere');
    await page.getByRole('button', { name: 'Keep it' }).click();
    await expect(page.getByText('“Europe/Nowhere” is no time zone')).toBeVisible();
    await expect(page.getByLabel(/^Time zone/)).toHaveValue('Europe/Zurich');
    await page.getByLabel('Name of the shop').fill('Own Harbour');
    await page.getByLabel(/^Time zone/).fill('Europe/Lisbon');
    await page.getByRole('button', { name: 'Keep it' }).click();
    await expect(page.getByText('Kept. What is counted by month follows')).toBeVisible();
    await expect(page.getByLabel(/^Time zone/)).toHaveValue('Europe/Lisbon');
    await page.goto(base);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Own Harbour');
  } finally {
    server.kill('SIGTERM');
    await ended;
    rmSync(folder, { recursive: true, force: true });
  }
});
