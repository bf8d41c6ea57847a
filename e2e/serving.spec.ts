import { expect, test } from '@playwright/test';

test('pages carry the headers that keep others out', async ({ request }) => {
  const headers = (await request.get('/jobs')).headers();
  expect(headers['content-security-policy']).toContain("frame-ancestors 'none'");
  expect(headers['content-security-policy']).toContain("default-src 'self'");
  expect(headers['x-content-type-options']).toBe('nosniff');
  expect(headers['referrer-policy']).toBe('same-origin');
  expect(headers['x-powered-by']).toBeUndefined();
});

test('the program says that it is well', async ({ request }) => {
  const response = await request.get('/health');
  expect(response.status()).toBe(200);
  expect(await response.json()).toEqual({ status: 'ok' });
});

test('an address that does not decode is one of nothing', async ({ request }) => {
  const places = ['/jobs/*', '/jobs/*/evidence', '/jobs/*/readings', '/jobs/*/record', '/jobs/*/picture'];
  places.push('/sheets/*', '/sheets/*/correct', '/sheets/*/download', '/gauges/*', '/technicians/*');
  places.push(
    '/technicians/*/download',
    '/technicians/*/sheet',
    '/habits/*',
    '/trials/*',
    '/trials/*/readings',
  );
  places.push('/trials/*/run', '/bay/*', '/bay/*/entries', '/load/*', '/nowhere/*');
  for (const place of places)
    expect((await request.get(place.replace('*', '%E0%A4%A'))).status(), place).toBe(404);
});

test('a file sent from another site’s page is refused', async ({ request }) => {
  const response = await request.post('/load/upload?name=a.csv', {
    data: 'job',
    headers: { 'Sec-Fetch-Site': 'cross-site', 'Content-Type': 'text/plain' },
  });
  expect(response.status()).toBe(403);
});

test('the theme form leads nowhere but to this shop', async ({ request }) => {
  const response = await request.post('/theme', {
    form: { theme: 'dark' },
    headers: { Referer: 'https://elsewhere.example/trap' },
    maxRedirects: 0,
  });
  expect(response.status()).toBe(303);
  expect(response.headers().location).toBe('/');
});

test('no page sends more than 170 kB of scripts or 200 kB in all else', async ({ page }) => {
  await page.goto('/jobs?sort=job');
  const job = await page.getByRole('rowheader').first().getByRole('link').getAttribute('href');
  for (const address of ['/', '/jobs', '/training', '/technicians', '/load', job ?? '/jobs']) {
    const session = await page.context().newCDPSession(page);
    await session.send('Network.enable');
    await session.send('Network.setCacheDisabled', { cacheDisabled: true });
    const types = new Map<string, string>();
    const sent = { script: 0, rest: 0 };
    session.on('Network.responseReceived', ({ requestId, type }) => types.set(requestId, type));
    session.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
      sent[types.get(requestId) === 'Script' ? 'script' : 'rest'] += encodedDataLength;
    });
    await page.goto(address, { waitUntil: 'networkidle' });
    expect(sent.script, address).toBeLessThan(170_000);
    expect(sent.rest, address).toBeLessThan(200_000);
    await session.detach();
  }
});
