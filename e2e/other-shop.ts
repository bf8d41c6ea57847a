import { execFileSync } from 'node:child_process';
import { expect, type APIRequestContext, type FullConfig } from '@playwright/test';

/**
 * Another shop in the same database, by the command that adds one; signs its manager in by the link it prints.
 * @returns the session, for browsers
 */
export async function enterOtherShop(
  config: FullConfig,
  request: APIRequestContext,
  name: string,
): Promise<Awaited<ReturnType<APIRequestContext['storageState']>>> {
  const printed = execFileSync(
    process.execPath,
    ['lib/commands/begin.mjs', 'lib/commands/shop.ts', name, '--manager', 'BOSS'],
    { env: { ...process.env, ...config.webServer?.env }, encoding: 'utf8' },
  );
  const path = /\/invitation\/[\w-]+/.exec(printed)?.[0] ?? '';
  const signInName = name
    .toLowerCase()
    .replaceAll(/[^a-z]/g, '')
    .slice(0, 30);
  const taken = await request.post(`${path}/take`, {
    form: { signInName, password: 'seven pins along the sill' },
    maxRedirects: 0,
  });
  expect(taken.headers().location).toBe('/');
  return request.storageState();
}
