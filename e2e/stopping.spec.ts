import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { request, type IncomingMessage } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { expect, test } from '@playwright/test';
import { TEST_BUILD } from '@/lib/commands/checks.mjs';
import { freePort } from '@/lib/commands/serve.mjs';
import { writeMeasurementFile } from '@/lib/measure';
import { regularShop } from '@/tests/unit/store/invented-readings';

const folder = mkdtempSync(join(tmpdir(), 'rehang-stopping-'));
test.afterAll(() => rmSync(folder, { recursive: true, force: true }));

const path = join(folder, 'shop.db');
const environment = {
  ...process.env,
  NODE_ENV: 'production',
  DATABASE_URL: `file:${path}`,
  REHANG_STAGING_DIR: join(folder, 'staged'),
  REHANG_SECRET: 'of this test, and of nothing else at all',
  REHANG_DIST_DIR: process.env.REHANG_DIST_DIR ?? TEST_BUILD,
} as const;
const begin = (...args: string[]) =>
  execFileSync(process.execPath, ['lib/commands/begin.mjs', ...args], { env: environment, encoding: 'utf8' });

const stored = () => {
  const database = new Database(path, { readonly: true });
  const { count } = database.prepare('SELECT count(*) AS "count" FROM "Reading"').get() as { count: number };
  database.close();
  return count;
};

/** A server of its own on the build of the tests; resolves once it answers. */
async function serving(port: number) {
  const server = spawn(process.execPath, ['lib/commands/server.mjs'], {
    env: { ...environment, PORT: String(port) },
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  let said = '';
  server.stderr.on('data', (text: Buffer) => (said += text.toString()));
  const ended = once(server, 'exit') as Promise<[number | null, NodeJS.Signals | null]>;
  const well = () =>
    fetch(`http://127.0.0.1:${port}/health`).then(
      ({ ok }) => ok,
      () => false,
    );
  while (!(await well())) {
    if (server.exitCode !== null) throw new Error(`The server did not start: ${said}`);
    await pause(50);
  }
  return { server, ended, said: () => said };
}

test('a server that is stopped in the middle of a load ends it, acknowledges it and goes with code 0', async () => {
  const token = begin('e2e/make-token.ts');
  const readings = regularShop(300);
  const port = await freePort();
  const { server, ended, said } = await serving(port);
  const load = request(`http://127.0.0.1:${port}/api/v1/measurements`, {
    method: 'POST',
    headers: { Authorization: `Bearer ${token}`, 'Content-Type': 'text/csv', Expect: '100-continue' },
  });
  const answer = once(load, 'response') as Promise<[IncomingMessage]>;
  load.flushHeaders();
  // The server has the request, and works on it as soon as it has the rest.
  await once(load, 'continue');
  load.end(writeMeasurementFile(readings));
  await once(load, 'finish');
  server.kill('SIGTERM');
  const [code] = await ended;
  expect(code).toBe(0);
  // Whatever was acknowledged is there, and what was not is absent.
  const status = await answer.then(
    ([{ statusCode }]) => statusCode,
    () => null,
  );
  expect(stored()).toBe(status === 201 ? readings.length : 0);
  expect(status).toBe(201);
  expect(said()).toContain('"msg":"stopped"');
});
