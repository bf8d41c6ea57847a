import { describe, expect, test } from 'vitest';
import { departuresFrom } from '@/app/_overview/departures';
import type { SdEstimate, TechnicianFigures } from '@/lib/assess';

const sd = (low: number, value: number, high: number): SdEstimate => ({
  sd: value,
  low,
  high,
  df: 50,
  why: null,
});
const shop = { repeatability: sd(0.48, 0.5, 0.52), setting: sd(0.95, 1, 1.05) };

function technician(code: string, change: Partial<TechnicianFigures>): TechnicianFigures {
  return {
    technician: code,
    readings: 100,
    setups: 50,
    jobs: 10,
    repeatability: sd(0.45, 0.5, 0.56),
    setting: sd(0.8, 1, 1.3),
    bias: { mean: 0.1, low: -0.2, high: 0.4, why: null },
    firstTimeRight: {
      jobs: 10,
      right: 5,
      rate: 0.5,
      low: 0.24,
      high: 0.76,
      why: null,
      expected: 5,
      shrunk: 0.5,
    },
    habits: [],
    ...change,
  };
}

describe('who is named as apart from the shop', () => {
  test('nobody whose interval holds the shop', () => {
    expect(departuresFrom({ technicians: [technician('A', {})], gauges: [], shop })).toEqual([]);
  });

  test('nobody whose difference is beyond chance but too small to matter', () => {
    const near = technician('A', {
      repeatability: sd(0.53, 0.55, 0.57),
      bias: { mean: 0.1, low: 0.02, high: 0.18, why: null },
    });
    expect(departuresFrom({ technicians: [near], gauges: [], shop })).toEqual([]);
  });

  test('who is, in the order of codes and not of sizes, with the sizes', () => {
    const technicians = [
      technician('B', { setting: sd(1.6, 1.9, 2.2) }),
      technician('A', { bias: { mean: -0.9, low: -1.2, high: -0.6, why: null } }),
    ];
    const found = departuresFrom({ technicians, gauges: [], shop });
    expect(found.map(({ technician: code, of }) => [code, of])).toEqual([
      ['A', 'bias'],
      ['B', 'setting'],
    ]);
    expect(found[0]?.words).toContain('Reads low');
    expect(found[1]?.words).toContain('1.90\u00a0mm (1.60 to 2.20\u00a0mm) against 1.00\u00a0mm');
  });

  test('nobody of whom nothing is known', () => {
    const unknown = technician('A', {
      repeatability: { sd: null, low: null, high: null, df: null, why: 'read once' },
      setting: { sd: null, low: null, high: null, df: null, why: 'none hung' },
      bias: { mean: null, low: null, high: null, why: 'alone' },
    });
    expect(departuresFrom({ technicians: [unknown], gauges: [], shop })).toEqual([]);
  });
});
