import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstTimeOutcomes } from '@/lib/assess/right-first-time';
import { MeasuredSums } from '@/lib/assess/measured';
import {
  collapse,
  faultSentence,
  readMeasurementFile,
  writeMeasurementFile,
  type Job,
  type Reading,
  type Side,
} from '@/lib/measure';
import { shops, shuffled } from './shops';

const RUNS = { numRuns: 60, seed: 2025 };

const LENGTH: Reading = {
  line: 2,
  job: 'J1',
  sheet: null,
  stage: 'before',
  attempt: 1,
  takenAt: Date.UTC(2025, 0, 6),
  technician: 'T1',
  gauge: 'M1',
  gaugeKind: null,
  setup: '1',
  quantity: 'length',
  point: 'K-N',
  side: null,
  section: null,
  station: null,
  zero: false,
  nominal: 1310,
  tolerance: 3,
  clearance: 0,
  repeat: 1,
  value: 1308,
  cause: null,
};

async function read(text: string): Promise<Reading[]> {
  const { readings, faults } = await readMeasurementFile(text);
  expect(faults.map(faultSentence)).toEqual([]);
  return readings;
}

describe('the order of lines', () => {
  it('changes nothing in the collapsed jobs, to the last bit', () => {
    fc.assert(
      fc.property(
        shops.chain((readings) => fc.tuple(fc.constant(readings), shuffled(readings))),
        ([readings, mixed]) => {
          expect(collapse(mixed)).toEqual(collapse(readings));
        },
      ),
      RUNS,
    );
  });

  it('changes nothing in what is read from a file', async () => {
    await fc.assert(
      fc.asyncProperty(
        shops.chain((readings) => fc.tuple(fc.constant(readings), shuffled(readings))),
        async ([readings, mixed]) => {
          const [one, other] = [
            await read(writeMeasurementFile(readings)),
            await read(writeMeasurementFile(mixed)),
          ];
          expect(collapse(other)).toEqual(collapse(one));
        },
      ),
      { ...RUNS, numRuns: 25 },
    );
  });

  it('names the same faulty line when its round stands elsewhere in the file', async () => {
    await fc.assert(
      fc.asyncProperty(
        shops.chain((readings) => fc.tuple(shuffled(readings), fc.nat({ max: readings.length - 1 }))),
        async ([readings, wrong]) => {
          const broken = readings.map((reading, i) =>
            i === wrong ? { ...reading, value: 99_999 } : reading,
          );
          const { faults } = await readMeasurementFile(writeMeasurementFile(broken));
          expect(faults.map(({ line, column }) => [line, column])).toEqual([[wrong + 2, 'value_mm']]);
        },
      ),
      { ...RUNS, numRuns: 25 },
    );
  });
});

describe('written and read again', () => {
  it('readings are the same', async () => {
    await fc.assert(
      fc.asyncProperty(shops, async (readings) => {
        expect(await read(writeMeasurementFile(readings))).toEqual(readings);
      }),
      { ...RUNS, numRuns: 25 },
    );
  });

  const label = fc
    .string({ unit: 'grapheme', minLength: 1, maxLength: 20 })
    .map((text) => text.normalize('NFC').trim())
    .filter(
      (text) => text !== '' && text.length <= 80 && !/[\p{Cc}\p{Cs}\u2028\u2029\ufeff\ufffd]/u.test(text),
    );

  it('any label is the same, also one that a spreadsheet would run', async () => {
    const formula = fc
      .tuple(fc.constantFrom('=', '+', '-', '@', "'", "'=", '"', ',', ';'), label)
      .map(([a, b]) => a + b);
    await fc.assert(
      fc.asyncProperty(fc.oneof(label, formula), async (technician) => {
        const readings = [{ ...LENGTH, technician }];
        expect(await read(writeMeasurementFile(readings))).toEqual(readings);
      }),
      RUNS,
    );
  });
});

describe('a constant added to every height and to the clearance', () => {
  it('changes nothing but the clearance itself', () => {
    fc.assert(
      fc.property(shops, fc.integer({ min: 1, max: 500 }), (readings, constant) => {
        const raised = readings.map((reading) =>
          reading.quantity === 'height'
            ? { ...reading, clearance: reading.clearance + constant, value: reading.value + constant }
            : reading,
        );
        const lowered = collapse(raised).map(withoutClearance);
        expect(lowered).toEqual(collapse(readings).map(withoutClearance));
        expect(firstTimeOutcomes(collapse(raised))).toEqual(firstTimeOutcomes(collapse(readings)));
        expect(MeasuredSums.of(collapse(raised)).hands()).toEqual(
          MeasuredSums.of(collapse(readings)).hands(),
        );
      }),
      RUNS,
    );
  });
});

describe('exchanging left and right', () => {
  it('mirrors the collapsed jobs and changes no figure', () => {
    fc.assert(
      fc.property(shops, (readings) => {
        const [jobs, mirrored] = [collapse(readings), collapse(readings.map(mirror))];
        expect(mirrored.map(sorted)).toEqual(jobs.map(mirrorJob).map(sorted));
        expect(firstTimeOutcomes(mirrored)).toEqual(firstTimeOutcomes(jobs));
        expect(MeasuredSums.of(mirrored).hands()).toEqual(MeasuredSums.of(jobs).hands());
      }),
      RUNS,
    );
  });
});

const withoutClearance = (job: Job) => ({
  ...job,
  rounds: job.rounds.map(({ clearance: _, ...round }) => round),
});

const otherSide = (side: Side | null): Side | null => (side === null ? null : side === 'L' ? 'R' : 'L');

const otherEnds = (point: string) =>
  point.replace(/\.([LR])/g, (_, side: string) => (side === 'L' ? '.R' : '.L'));

function mirror<T extends { side: Side | null; point: string }>(item: T): T {
  return { ...item, side: otherSide(item.side), point: otherEnds(item.point) };
}

const eachSetup = (job: Job, change: (setup: Job['rounds'][number]['setups'][number]) => object) => ({
  ...job,
  rounds: job.rounds.map((round) => ({ ...round, setups: round.setups.map(change) })),
});

function mirrorJob(job: Job): Job {
  const setups = eachSetup(job, (setup) => ({ ...setup, observations: setup.observations.map(mirror) }));
  return setups as Job;
}

/** Left and right of one setup may be read in the same minute; then their order is by name. */
const sorted = (job: Job) =>
  eachSetup(job, (setup) => ({
    ...setup,
    observations: [...setup.observations].sort((a, b) => (a.side ?? '').localeCompare(b.side ?? '')),
  }));
