import { describe, expect, it } from 'vitest';
import { collapse, faultSentence, readMeasurementFile } from '@/lib/measure';
import { sample } from './sample';

const NOW = Date.UTC(2026, 0, 1);

describe('files as shops have them', () => {
  it.each([
    ['small.csv', 456, 6, 'comma', false],
    ['standard.csv', 995, 12, 'comma', false],
    ['hard.csv', 912, 10, 'comma', false],
    ['messy-semicolon.csv', 400, 5, 'semicolon', true],
    ['messy-tab.csv', 491, 5, 'tab', false],
  ])('%s is read without a fault', async (name, readings, jobs, separator, decimalComma) => {
    const file = await readMeasurementFile(sample(name), { name, now: NOW });
    expect(file.faults.map(faultSentence)).toEqual([]);
    expect(file.readings).toHaveLength(readings);
    expect(file.summary).toMatchObject({ name, readings, jobs, separator, decimalComma });
    expect(collapse(file.readings)).toHaveLength(jobs);
  });

  it('a column that is not in the format is ignored, and the summary says so', async () => {
    const { summary } = await readMeasurementFile(sample('messy-tab.csv'), { now: NOW });
    expect(summary.ignoredColumns).toEqual(['remark']);
    expect(summary.notes).toEqual(['Columns that were not read: remark.']);
  });

  it('lines that were pasted twice are pointed out where repeats have no numbers', async () => {
    const text = sample('messy-tab.csv').toString();
    const [header = '', first = '', ...rest] = text.split('\n');
    const { summary, faults } = await readMeasurementFile([header, first, first, ...rest].join('\n'), {
      now: NOW,
    });
    expect(faults).toEqual([]);
    expect(summary.notes).toContainEqual(
      expect.stringContaining('time and value included: 1 (the first is line 3)'),
    );
  });

  it('times without an offset are those of the shop', async () => {
    const read = (timeZone: string) =>
      readMeasurementFile(sample('messy-semicolon.csv'), { timeZone, now: NOW });
    const [utc, berlin] = [await read('UTC'), await read('Europe/Berlin')];
    expect(utc.readings[0]?.takenAt).toBe(Date.UTC(2025, 0, 6, 7, 31));
    expect(berlin.readings[0]?.takenAt).toBe(Date.UTC(2025, 0, 6, 6, 31));
  });

  it('what a file leaves out is what the contract says by default', async () => {
    const { readings } = await readMeasurementFile(sample('messy-tab.csv'), { now: NOW });
    expect(new Set(readings.map((r) => r.tolerance))).toEqual(new Set([3]));
    expect(readings.slice(0, 4).map((r) => [r.point, r.repeat])).toEqual([
      ['E', 1],
      ['E', 2],
      ['F', 1],
      ['F', 2],
    ]);
  });

  it('a file in chunks that split characters and lines is read like the whole', async () => {
    const bytes = sample('messy-semicolon.csv');
    const chunks = Array.from({ length: Math.ceil(bytes.length / 7) }, (_, i) =>
      bytes.subarray(i * 7, i * 7 + 7),
    );
    const [whole, pieces] = [await readMeasurementFile(bytes), await readMeasurementFile(chunks)];
    expect(pieces).toEqual(whole);
  });
});

describe('a file with planted faults', () => {
  it('is refused as a whole, every planted line named and no other', async () => {
    const { readings, faults } = await readMeasurementFile(sample('broken.csv'), { now: NOW });
    expect(readings).toEqual([]);
    expect(faults.map(({ line, column }) => [line, column])).toEqual([
      [5, 'value_mm'],
      [10, 'stage'],
      [15, 'taken_at'],
      [20, 'side'],
      [25, 'value_mm'],
      [30, 'technician'],
      [35, 'nominal_mm'],
      [40, 'taken_at'],
      [45, null],
      [50, 'quantity'],
      [55, 'gauge'],
      [60, 'tolerance_mm'],
    ]);
  });

  it('says what is wrong and how to mend it', async () => {
    const { faults } = await readMeasurementFile(sample('broken.csv'), { now: NOW });
    const sentences = faults.map(faultSentence).join('\n');
    expect(sentences).toContain('Line 5, column value_mm: "35o.1" is not a number: it holds "o"');
    expect(sentences).toContain('Did you mean height?');
    expect(sentences).toContain('The line has 9 fields where the header has 21');
    expect(sentences).toMatch(/nominal_mm of height B R is 351.5 here and 327 on line 9 and \d+ others/);
    expect(sentences).toContain('has gauge C99 here and C02 on line 51 and 3 others');
  });
});
