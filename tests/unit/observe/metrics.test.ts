import { describe, expect, it } from 'vitest';
import { routeFinder } from '@/lib/commands/route-finder.mjs';
import { countRequest, metricsText } from '@/lib/observe';

const counts = { databaseUp: true, figuresAge: 12.5, stale: false, files: 3, readings: 456 };

describe('metrics', () => {
  it('are in the open exposition format, those of the process with those of one shop', async () => {
    countRequest('GET', '/jobs/[job]', 200, 0.02);
    countRequest('GET', '/jobs/[job]', 200, 0.2);
    const { type, text } = await metricsText(counts);
    expect(type).toContain('text/plain; version=0.0.4');
    expect(text).toContain('rehang_requests_total{method="GET",route="/jobs/[job]",status="200"} 2');
    expect(text).toContain('rehang_request_duration_seconds_bucket{le="0.1",route="/jobs/[job]"} 1');
    expect(text).toContain('rehang_figures_age_seconds 12.5');
    expect(text).toContain('rehang_readings_total 456');
    expect(text).toContain('process_resident_memory_bytes');
    expect(
      text
        .split('\n')
        .filter((line) => line !== '' && !/^(# |[a-z_0-9]+(\{.*\})? [-+\d.eNaInf]+$)/.test(line)),
    ).toEqual([]);
  });

  it('hold nothing of the shop that was asked for before', async () => {
    await metricsText(counts);
    const { text } = await metricsText({ ...counts, figuresAge: null, files: 1, readings: 7 });
    expect(text).toContain('rehang_readings_total 7\n');
    expect(text).not.toContain('rehang_figures_age_seconds');
  });
});

describe('the route of a request', () => {
  const routeOf = routeFinder({
    staticRoutes: [{ page: '/' }, { page: '/jobs' }],
    dynamicRoutes: [{ page: '/jobs/[job]', regex: '^/jobs/([^/]+?)(?:/)?$' }],
  });

  it('is the program’s name for it and never the address, which names people and vehicles', () => {
    expect(routeOf('/jobs?technician=GRETA')).toBe('/jobs');
    expect(routeOf('/jobs/K4105')).toBe('/jobs/[job]');
    expect(routeOf('/people/GRETA')).toBe('other');
    expect(routeOf(`/jobs/${'a'.repeat(100_000)}`)).toBe('other');
    expect(routeOf('/_next/static/a.js')).toBe('/_next');
  });
});
