import { describe, expect, it } from 'vitest';
import { assessShop } from '@/lib/assess';
import { firstReadings } from '@/lib/assess/habits';
import { sharedLines, SharedReadings, tableOf } from '@/lib/measure';
import { batchReportText, packedReport } from '@/lib/reports';
import { assessLines, threads } from '@/lib/reports/together';
import { habitShop } from '@/tests/simulation/habit-shop';

// More jobs than one part has, so that parts are put together.
const { readings, jobs } = habitShop({ seed: 5, jobs: 21, hands: { A: {}, B: { leftLow: 2 }, C: {} } });
const table = tableOf(readings);
const lines = sharedLines(table);

const textOf = (pieces: Iterable<string | Uint8Array>): string =>
  Buffer.concat(Array.from(pieces, (piece) => Buffer.from(piece))).toString();

describe('a shop worked out from the lines of its files', () => {
  it('comes to the same report by two threads as from its jobs on one, to the last digit', async () => {
    const told: number[] = [];
    const crew = threads(2);
    const { shop, texts } = await assessLines(crew, lines, { onJudged: (judged) => told.push(judged) });
    await crew.close();
    const plain = assessShop(jobs, { firsts: firstReadings(readings) });
    expect(textOf(packedReport(shop, texts))).toBe(textOf(batchReportText(plain)));
    // Two parts, and no job lost between them.
    expect(told).toEqual([expect.any(Number), jobs.length]);
  });

  it('has its jobs in the order in which they are collapsed, and their readings as they came', () => {
    const shared = new SharedReadings(lines);
    const byJob = shared.jobsInOrder.map((job) => shared.readingsOf(job));
    expect(byJob.map(([first]) => first?.job)).toEqual(jobs.map(({ job }) => job));
    expect(byJob.flat()).toEqual(
      jobs.flatMap(({ job }) => [...table].filter((reading) => reading.job === job)),
    );
  });
});
