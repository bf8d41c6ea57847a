import { describe, expect, it } from 'vitest';
import type { ShopAssessment } from '@/lib/assess/shop-assessment';
import { batchReport, batchReportText, packed, packedReport, verdictText } from '@/lib/reports';

const SHOP: ShopAssessment = {
  technicians: [
    {
      technician: 'T1',
      readings: 30,
      setups: 12,
      jobs: 2,
      repeatability: { sd: 0.5, df: 18, low: 0.378, high: 0.739, why: null },
      setting: { sd: null, df: null, low: null, high: null, why: 'No station was hung twice.' },
      bias: { mean: -0.1, low: -0.6, high: 0.4, why: null },
      firstTimeRight: {
        jobs: 2,
        right: 1,
        rate: 0.5,
        low: 0.09,
        high: 0.91,
        why: null,
        expected: 0.9,
        shrunk: 0.48,
      },
      habits: [
        { habit: 'whole millimetres', strength: 0.7, evidence: '21 of 30 end in 0', setups: ['J1/B1-01'] },
      ],
    },
  ],
  gauges: [
    { gauge: 'C01', readings: 8, bias: { mean: null, low: null, high: null, why: 'One gauge only.' } },
  ],
  rounds: [
    {
      job: 'J1',
      stage: 'before',
      attempt: 1,
      decidable: true,
      why: null,
      pZeroMisset: 0.25,
      datum: [],
      centerline: [],
      leftOut: 0.01,
      heights: [
        {
          setup: 'B1-03',
          gauge: 'C01',
          technician: 'T1',
          point: 'A',
          side: 'L',
          station: 0,
          zero: false,
          deviation: 6.123456789012345,
          p: { neither: 0.1, gauge: 0.6, body: 0.2, both: 0.1 },
          misset: 5.1,
          body: 0.9,
          signature: 'two digits exchanged',
        },
      ],
      nextChecks: [
        {
          action: 'rehang',
          setup: 'B1-03',
          other: null,
          point: null,
          gainBits: 0.8,
          minutes: 4,
          words: 'Hang gauge C01 again at A and read again.',
        },
        {
          action: 'read-length',
          setup: null,
          other: null,
          point: 'A-C',
          gainBits: 0.2,
          minutes: 2,
          words: 'Read A-C.',
        },
      ],
    },
    {
      job: 'J1',
      stage: 'after',
      attempt: 1,
      decidable: false,
      why: 'The center section is out.',
      pZeroMisset: 0.5,
      datum: [],
      centerline: [],
      leftOut: 0,
      heights: [],
      nextChecks: [],
    },
  ],
  firstTimeRight: { jobs: 0, right: 0, rate: null, low: null, high: null, why: 'No job yet.' },
};

describe('the batch report', () => {
  it('has the shape and the names of the contract', () => {
    expect(batchReport(SHOP)).toEqual({
      technicians: [
        {
          technician: 'T1',
          readings: 30,
          setups: 12,
          jobs: 2,
          repeatability: { sd_mm: 0.5, df: 18, low_mm: 0.378, high_mm: 0.739 },
          setup: { sd_mm: null, low_mm: null, high_mm: null, why: 'No station was hung twice.' },
          bias: { mean_mm: -0.1, low_mm: -0.6, high_mm: 0.4 },
          first_time_right: {
            jobs: 2,
            right: 1,
            rate: 0.5,
            low: 0.09,
            high: 0.91,
            expected: 0.9,
            shrunk: 0.48,
          },
          habits: [
            {
              habit: 'whole millimetres',
              strength: 0.7,
              evidence: '21 of 30 end in 0',
              setups: ['J1/B1-01'],
            },
          ],
        },
      ],
      gauges: [
        {
          gauge: 'C01',
          readings: 8,
          bias: { mean_mm: null, low_mm: null, high_mm: null, why: 'One gauge only.' },
        },
      ],
      heights: [
        {
          job: 'J1',
          stage: 'before',
          attempt: 1,
          setup: 'B1-03',
          gauge: 'C01',
          technician: 'T1',
          point: 'A',
          side: 'L',
          station_mm: 0,
          zero: false,
          deviation_mm: 6.123456789012345,
          p_neither: 0.1,
          p_gauge: 0.6,
          p_body: 0.2,
          p_both: 0.1,
          misset_mm: 5.1,
          body_mm: 0.9,
          signature: 'two digits exchanged',
        },
      ],
      rounds: [
        {
          job: 'J1',
          stage: 'before',
          attempt: 1,
          decidable: true,
          why: null,
          p_zero_misset: 0.25,
          next_check: { action: 'rehang', setup: 'B1-03', gain_bits: 0.8 },
        },
        {
          job: 'J1',
          stage: 'after',
          attempt: 1,
          decidable: false,
          why: 'The center section is out.',
          p_zero_misset: 0.5,
          next_check: null,
        },
      ],
      first_time_right: { jobs: 0, right: 0, rate: null, low: null, high: null, why: 'No job yet.' },
    });
  });

  it('as text is the same document, every digit kept', () => {
    const text = [...batchReportText(SHOP)].join('');
    expect(JSON.parse(text)).toEqual(batchReport(SHOP));
    expect(text).toContain('6.123456789012345');
  });

  it('is the same document where verdicts are text already, part by part, some parts without any', () => {
    const [first] = SHOP.rounds;
    if (first === undefined) throw new Error('The shop has changed.');
    const rounds = ['J7', 'J8', 'J9'].map((job) => ({ ...first, job }));
    const parts = [rounds.slice(0, 1), [], rounds.slice(1)].map(verdictText);
    // Of a small file they are kept as they are, of a large one deflated.
    for (const [readings, isDeflated] of [
      [100, false],
      [1_000_000, true],
    ] as const) {
      const texts = parts.map((part) => packed(part, readings));
      expect(texts.map(({ heights }) => heights.isDeflated)).toEqual(texts.map(() => isDeflated));
      const text = Array.from(packedReport(SHOP, texts), (piece) => Buffer.from(piece).toString()).join('');
      expect(JSON.parse(text)).toEqual(batchReport({ ...SHOP, rounds }));
    }
  });

  it('of an empty shop is a document too', () => {
    const empty = { technicians: [], gauges: [], rounds: [], firstTimeRight: SHOP.firstTimeRight };
    expect(JSON.parse([...batchReportText(empty)].join(''))).toEqual(batchReport(empty));
  });

  it('names the length to read, and the second gauge of an exchange', () => {
    const [first] = SHOP.rounds;
    const [rehang, read] = first?.nextChecks ?? [];
    if (first === undefined || rehang === undefined || read === undefined)
      throw new Error('The shop has changed.');
    const exchange = { ...rehang, action: 'exchange' as const, other: 'B1-04' };
    const rounds = [read, exchange].map((check) => ({ ...first, nextChecks: [check] }));
    expect(batchReport({ ...SHOP, rounds }).rounds.map((round) => round.next_check)).toEqual([
      { action: 'read-length', setup: null, gain_bits: 0.2, point: 'A-C' },
      { action: 'exchange', setup: 'B1-03', gain_bits: 0.8, other: 'B1-04' },
    ]);
  });

  it('refuses a number that JSON would turn into null without a reason', () => {
    const rounds = SHOP.rounds.map((round) => ({ ...round, pZeroMisset: NaN }));
    expect(() => [...batchReportText({ ...SHOP, rounds })]).toThrow(/p_zero_misset is NaN/);
  });
});
