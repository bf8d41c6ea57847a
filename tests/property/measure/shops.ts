import fc from 'fast-check';
import type { Dimension, Reading, Section, Side } from '@/lib/measure';

/** Invented shops for the properties: sound files with any number of jobs, rounds, setups and repeats. */

interface Station {
  letter: string;
  x: number;
  section: Section;
  zero: boolean;
  nominal: number;
}

const STATIONS: readonly Station[] = [
  { letter: 'A', x: 0, section: 'front', zero: false, nominal: 310.5 },
  { letter: 'C', x: 1088, section: 'center', zero: true, nominal: 201 },
  { letter: 'E', x: 2670, section: 'center', zero: true, nominal: 245 },
  { letter: 'G', x: 3722, section: 'rear', zero: false, nominal: 147.2 },
];

const LENGTHS: readonly Dimension[] = [
  {
    quantity: 'length',
    point: 'C-E',
    side: null,
    section: 'center',
    station: null,
    zero: false,
    nominal: 1587,
    tolerance: 3,
  },
  {
    quantity: 'length',
    point: 'A.L-C.R',
    side: null,
    section: 'front',
    station: null,
    zero: false,
    nominal: 1504,
    tolerance: 2,
  },
];

const SIDES: readonly Side[] = ['L', 'R'];

const heightsAt = (station: Station): Dimension[] =>
  SIDES.map((side) => ({
    quantity: 'height',
    // A letter on each side, so that `C-E` is one length.
    point: side === 'L' ? station.letter : `${station.letter}r`,
    side,
    section: station.section,
    station: station.x,
    zero: station.zero,
    nominal: station.nominal,
    tolerance: 3,
  }));

const SETTINGS: readonly Dimension[][] = [...STATIONS.map(heightsAt), ...LENGTHS.map((length) => [length])];

/** Tenths of a millimetre, as a scale is read. */
const error = fc.integer({ min: -120, max: 120 }).map((tenths) => tenths / 10);

const oneSetup = fc.record({
  again: fc.boolean(),
  technician: fc.constantFrom('T1', 'T2', 'Ö3'),
  errors: fc.array(error, { minLength: 2, maxLength: 6 }),
});

const oneRound = fc.record({
  stage: fc.constantFrom('before' as const, 'after' as const),
  attempt: fc.integer({ min: 1, max: 3 }),
  clearance: fc.constantFrom(0, 50, 100),
  minute: fc.integer({ min: 0, max: 5000 }),
  setups: fc.tuple(...SETTINGS.map(() => oneSetup)),
});

const oneJob = fc.uniqueArray(oneRound, {
  minLength: 1,
  maxLength: 3,
  selector: (r) => `${r.stage} ${r.attempt}`,
});

/** Readings of one to three jobs that together make a sound file. */
export const shops: fc.Arbitrary<Reading[]> = fc
  .array(oneJob, { minLength: 1, maxLength: 3 })
  .map((jobs) => jobs.flatMap((rounds, j) => rounds.flatMap((round, r) => roundReadings(`J${j}`, r, round))))
  .map((readings) => readings.map((reading, i) => ({ ...reading, line: i + 2 })));

type Made<A> = A extends fc.Arbitrary<infer T> ? T : never;

function roundReadings(job: string, index: number, round: Made<typeof oneRound>): Reading[] {
  let minute = round.minute;
  return round.setups.flatMap((setup, s) => {
    const hangings = setup.again ? [0, 1] : [0];
    return hangings.flatMap((hanging) =>
      (SETTINGS[s] ?? []).flatMap((dimension) => {
        const own = setup.errors.slice(hanging, hanging + 3);
        return own.map((error, i): Reading => {
          const isHeight = dimension.quantity === 'height';
          const clearance = isHeight ? round.clearance : 0;
          return {
            ...dimension,
            line: 0,
            job,
            sheet: 'S1',
            stage: round.stage,
            attempt: round.attempt,
            takenAt: Date.UTC(2025, 0, 6) + minute++ * 60_000,
            technician: setup.technician,
            gauge: isHeight ? `C${s}` : 'M1',
            gaugeKind: isHeight ? 'centering' : 'tram',
            setup: `${index}-${s}-${hanging}`,
            clearance,
            repeat: i + 1,
            value: Math.round((dimension.nominal + clearance + error) * 10) / 10,
            cause: null,
          };
        });
      }),
    );
  });
}

/** The same readings in another order. */
export const shuffled = (readings: readonly Reading[]): fc.Arbitrary<Reading[]> =>
  fc.shuffledSubarray([...readings], { minLength: readings.length });
