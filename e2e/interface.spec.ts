import { readFileSync } from 'node:fs';
import { expect, test, type Page } from '@playwright/test';
import { NOBODY } from './signed-in';

const SAMPLE = 'tests/reference/samples/small.csv';

/** Makes a token as the manager does, and returns it. */
async function makeToken(page: Page, name: string, uses: readonly string[]): Promise<string> {
  await page.goto('/settings/tokens');
  await page.getByLabel('Name: which program it is for').fill(name);
  for (const use of uses) await page.getByLabel(use).check();
  await page.getByRole('button', { name: 'Make it' }).click();
  const told = await page.getByText(/shown this once/).innerText();
  const token = /rehang_[\w-]{43}/.exec(told)?.[0];
  if (token === undefined) throw new Error(`No token was told: ${told}`);
  return token;
}

test.describe('a page', () => {
  test('lets only scripts run that carry the nonce of its own answer', async ({ request }) => {
    const nonces: string[] = [];
    for (const address of ['/jobs', '/jobs', '/sign-in', '/nothing-of-this-name']) {
      const response = await request.get(address);
      const policy = response.headers()['content-security-policy'] ?? '';
      const nonce = /script-src [^;]*'nonce-([\w+/=]+)'/.exec(policy)?.[1] ?? '';
      expect(policy, address).not.toContain('unsafe');
      expect(nonce.length, address).toBeGreaterThan(20);
      const html = await response.text();
      const scripts = html.match(/<script\b[^>]*>/g) ?? [];
      expect(scripts.length, address).toBeGreaterThan(0);
      for (const script of scripts) expect(script, address).toContain(`nonce="${nonce}"`);
      expect(html, address).not.toMatch(/<[^>]+\s(style|on\w+)="/);
      nonces.push(nonce);
    }
    expect(new Set(nonces).size).toBe(nonces.length);
  });

  test('is kept by nobody, framed by nobody and opened by nobody', async ({ request }) => {
    const headers = (await request.get('/jobs')).headers();
    expect(headers).toMatchObject({
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'same-origin',
      'x-frame-options': 'DENY',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-resource-policy': 'same-origin',
      'permissions-policy': expect.stringContaining('camera=()'),
      'cache-control': expect.stringContaining('no-store'),
    });
  });

  test('asks for https only where it came that way, and takes no browser’s word for it', async ({
    request,
  }) => {
    const response = await request.get('/jobs', { headers: { 'X-Forwarded-Proto': 'https' } });
    expect(response.headers()['strict-transport-security']).toBeUndefined();
  });
});

test.describe('what is no page', () => {
  test.use({ storageState: NOBODY });

  test('has a policy under which nothing runs, and is kept by nobody', async ({ request }) => {
    for (const address of ['/health', '/metrics', '/api/v1/report', '/api/v1/openapi.json']) {
      const headers = (await request.get(address)).headers();
      expect(headers['content-security-policy'], address).toContain("default-src 'none'");
      expect(headers['cache-control'], address).toBe('no-store');
      expect(headers['x-content-type-options'], address).toBe('nosniff');
    }
  });

  test('says to a stranger that the program runs and can serve, and no more', async ({ request }) => {
    for (const address of ['/health', '/health/live'])
      expect(await (await request.get(address)).json()).toEqual({ status: 'ok' });
    expect((await request.get('/metrics')).status()).toBe(401);
  });
});

test('a token made by the manager lets a program in until it is revoked', async ({
  page,
  playwright,
  baseURL,
}) => {
  const name = `program ${Date.now()}`;
  const token = await makeToken(page, name, [
    'load measurements',
    'fetch reports and jobs',
    'watch the program',
  ]);
  await page.reload();
  const program = await playwright.request.newContext({
    ...(baseURL !== undefined && { baseURL }),
    storageState: NOBODY,
    extraHTTPHeaders: { Authorization: `Bearer ${token}` },
  });

  const body = readFileSync(SAMPLE);
  const send = (data: Buffer, type: string) =>
    program.post('/api/v1/measurements?dry_run=true', { data, headers: { 'Content-Type': type } });
  const judged = await send(body, 'text/csv');
  expect(judged.status()).toBe(200);
  expect(await judged.json()).toMatchObject({ dry_run: true, file: { readings: 456 }, stored: null });
  expect((await send(body, 'application/octet-stream')).status()).toBe(415);
  const faulty = await send(Buffer.from(body.toString().replace(',before,', ',during,')), 'text/csv');
  expect(faulty.status()).toBe(422);
  expect(faulty.headers()['content-type']).toBe('application/problem+json');
  expect(((await faulty.json()) as { faults: object[] }).faults[0]).toMatchObject({
    line: 2,
    column: 'stage',
  });

  const report = (await (await program.get('/api/v1/report')).json()) as { rounds: object[] };
  expect(report.rounds.length).toBeGreaterThan(100);
  expect((await program.get('/api/v1/jobs/K4105')).status()).toBe(200);
  expect((await program.get('/api/v1/measurements')).status()).toBe(403);
  const metrics = await (await program.get('/metrics')).text();
  expect(metrics).toMatch(
    /^rehang_requests_total\{method="GET",route="\/api\/v1\/jobs\/\[job\]",status="200"\} \d+$/m,
  );
  expect(metrics).toMatch(/^rehang_database_up 1$/m);

  await page.goto('/settings/tokens');
  await page.getByRole('button', { name: `Revoke ${name}` }).click();
  await expect(page.getByText('Revoked: it no longer works.')).toBeVisible();
  expect((await program.get('/api/v1/report')).status()).toBe(401);
});

test('a large body reaches the program whole: none is cut on its way', async ({
  page,
  playwright,
  baseURL,
}) => {
  const token = await makeToken(page, `large ${Date.now()}`, ['load measurements']);
  const program = await playwright.request.newContext({
    ...(baseURL !== undefined && { baseURL }),
    storageState: NOBODY,
    extraHTTPHeaders: { Authorization: `Bearer ${token}`, 'Content-Type': 'text/csv' },
  });
  // Eleven million bytes of one header line and lines that are no readings: refused, but read to the last of them.
  const line = `${'x'.repeat(99_990)}\n`;
  const [header = ''] = readFileSync(SAMPLE, 'utf8').split('\n', 1);
  const answer = await program.post('/api/v1/measurements?dry_run=true', {
    data: `${header}\n${line.repeat(112)}`,
  });
  expect(answer.status()).toBe(422);
  expect(((await answer.json()) as { fault_count: number }).fault_count).toBe(112);
});
