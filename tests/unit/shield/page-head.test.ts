import { IncomingMessage, ServerResponse } from 'node:http';
import { Socket } from 'node:net';
import { describe, expect, it } from 'vitest';
import { headPage, NONCE_HEADER, PATH_HEADER } from '@/lib/shield';

function headed(url: string, headers: Record<string, string> = {}) {
  const request = new IncomingMessage(new Socket());
  Object.assign(request, { url, headers: { ...headers } });
  const response = new ServerResponse(request);
  headPage(request, response);
  return { headers: request.headers, policy: response.getHeader('content-security-policy') };
}

describe('a page', () => {
  it.each([
    '/',
    '/jobs?page=2',
    '/no/such',
    '/_next',
    '/api',
    '/icon.svgs',
    '/api/../jobs',
    '/x/%2e%2e/jobs',
    '//api/',
  ])('%s has a policy with the nonce that the framework finds in the request', (url) => {
    const { headers, policy } = headed(url);
    expect(headers['content-security-policy']).toBe(policy);
    expect(policy).toContain(`script-src 'self' 'nonce-${String(headers[NONCE_HEADER])}' 'strict-dynamic'`);
  });

  it('takes no nonce that a request brings, and gives none twice', () => {
    const brought = { [NONCE_HEADER]: 'mine', 'content-security-policy': "script-src 'nonce-mine'" };
    const nonces = Array.from({ length: 50 }, () => headed('/', brought).headers[NONCE_HEADER]);
    expect(new Set(nonces).size).toBe(50);
    for (const nonce of nonces) expect(nonce).toMatch(/^[\w+/]{22}==$/);
    expect(headed('/', brought).policy).not.toContain('mine');
  });

  it('is told the path that was asked for, without what the framework adds', () => {
    expect(headed('/jobs?page=2&_rsc=1x2', { [PATH_HEADER]: '/elsewhere' }).headers[PATH_HEADER]).toBe(
      '/jobs?page=2',
    );
    expect(headed('/jobs?_rsc=1').headers[PATH_HEADER]).toBe('/jobs');
  });
});

it.each([
  '/_next/static/a.js',
  '/api/v1/jobs/1',
  '/health',
  '/health/live',
  '/metrics',
  '/load/upload',
  '/icon.svg',
])('%s is no page, and has its headers elsewhere', (url) => {
  expect(headed(url).policy).toBeUndefined();
});
