import { collapse, type Reading } from '@/lib/measure';
import { firstReadings, type HabitTally, tallyHabits } from '@/lib/assess/habits';
import type { RoundVerdict } from '@/lib/assess';

const START = 1_700_000_000_000;

/** A reading of one round of job J1, to be changed where a test needs it. */
export const reading = (change: Partial<Reading>): Reading => ({
  line: 2,
  job: 'J1',
  sheet: 'S1',
  stage: 'before',
  attempt: 1,
  takenAt: START,
  technician: 'T1',
  gauge: 'C1',
  gaugeKind: 'centering',
  setup: 'B1-01',
  quantity: 'height',
  point: 'A',
  side: 'L',
  section: 'front',
  station: 0,
  zero: false,
  nominal: 250,
  tolerance: 3,
  clearance: 100,
  repeat: 1,
  value: 350,
  cause: null,
  ...change,
});

/** A height on both sides of one setup, by deviations; time by `minute`. */
export function hung(minute: number, left: number, right: number, change: Partial<Reading> = {}): Reading[] {
  const setup = change.setup ?? `B1-${String(minute).padStart(2, '0')}`;
  const takenAt = START + minute * 60_000;
  return [
    reading({ takenAt, setup, point: 'A', side: 'L', value: 350 + left, ...change }),
    reading({ takenAt: takenAt + 1000, setup, point: 'B', side: 'R', value: 350 + right, ...change }),
  ];
}

export const length = (minute: number, change: Partial<Reading> = {}): Reading =>
  reading({
    takenAt: START + minute * 60_000,
    setup: `B1-${String(minute).padStart(2, '0')}`,
    quantity: 'length',
    gauge: 'M1',
    gaugeKind: 'tram',
    point: 'C-E',
    side: null,
    section: 'center',
    station: null,
    clearance: 0,
    nominal: 1400,
    value: 1400,
    ...change,
  });

/** Tallies of these readings' jobs, by technician; of several jobs, the first is meant. */
export function tallied(
  readings: readonly Reading[],
  verdicts: readonly RoundVerdict[] = [],
): Map<string, HabitTally> {
  const [job] = collapse(readings);
  if (job === undefined) throw new RangeError('There is no job.');
  return tallyHabits(job, verdicts, firstReadings(readings).get(job.job));
}

export function tallyOf(readings: readonly Reading[], technician = 'T1'): HabitTally {
  const tally = tallied(readings).get(technician);
  if (tally === undefined) throw new RangeError(`${technician} is not met.`);
  return tally;
}
