import { describe, expect, test } from 'vitest';
import { lineWords } from '@/app/load/_parts/fault-list';
import { faultGroups, RUNS_KEPT } from '@/app/load/_staging/fault-groups';

const fault = (line: number | null, value: string | null = 'during', column: string | null = 'stage') => ({
  line,
  column,
  value,
  message: `"${value}" is none of before, after.`,
});

describe('faults of a file', () => {
  test('that are the same on many lines are one, with its runs of lines', () => {
    const groups = faultGroups([fault(2), fault(3), fault(4, 'later'), fault(5), fault(6), fault(9)]);
    expect(groups.map(({ value, runs, lines }) => [value, runs, lines])).toEqual([
      [
        'during',
        [
          [2, 3],
          [5, 6],
          [9, 9],
        ],
        5,
      ],
      ['later', [[4, 4]], 1],
    ]);
  });

  test('keep a bounded number of runs and count every line', () => {
    const faults = Array.from({ length: 200 }, (_, index) => fault(2 * index + 2));
    const [group] = faultGroups(faults);
    expect(group?.runs).toHaveLength(RUNS_KEPT);
    expect(group?.lines).toBe(200);
  });

  test('name each line, in words that a person reads', () => {
    const words = (...lines: (number | null)[]) =>
      faultGroups(lines.map((line) => fault(line))).map(lineWords);
    expect(words(null)).toEqual(['whole file']);
    expect(words(7)).toEqual(['7']);
    expect(words(2, 5)).toEqual(['2, 5']);
    expect(words(...Array.from({ length: 2000 }, (_, index) => index + 2))).toEqual([
      '2 to 2,001 (2,000 lines)',
    ]);
    expect(words(...Array.from({ length: 12 }, (_, index) => 2 * index + 2))).toEqual([
      '2, 4, 6, 8, 10, 12, 14, 16 and 4 more lines',
    ]);
  });
});
