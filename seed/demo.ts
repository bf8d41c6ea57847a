import type { Reading } from '@/lib/measure';
import type { Person, Sheet, Shop } from '@/lib/store';
import { DayBook, dayOfJob, dayStart, workingDays } from './calendar';
import { storedSheet } from './dimensions';
import { GAUGES, VERIFIED_GAUGES, type VerifiedGauge } from './gauges';
import { runJob } from './job';
import { PEOPLE, TECHNICIANS } from './people';
import { randomAt } from './random';
import { SHEETS } from './sheets';
import {
  FIRST_DAY,
  FIRST_JOB_NUMBER,
  JOBS,
  LAST_DAY,
  LEFTOVER,
  LEFTOVER_IN_SLUMP,
  SHOP_NAME,
  SLUMP_FROM,
  SLUMP_TO,
  TIME_ZONE,
} from './stories';
import type { DemoTruth, JobTruth } from './truth';
import type { Workshop } from './workshop';

/** The seed number of the demo shop that everybody sees. */
export const DEMO_SEED = 4101;

export interface DemoShop {
  shop: Pick<Shop, 'name' | 'timeZone' | 'defaultTolerance'>;
  people: Person[];
  gauges: VerifiedGauge[];
  sheets: Sheet[];
  /** In the order of their time; `line` counts as in a file of them all. */
  readings: Reading[];
}

/** The demo shop's year, the same for the same seed number. */
export function demoShop(seed = DEMO_SEED): DemoShop {
  return {
    shop: { name: SHOP_NAME, timeZone: TIME_ZONE, defaultTolerance: 3 },
    people: [...PEOPLE],
    gauges: [...VERIFIED_GAUGES],
    sheets: SHEETS.map(storedSheet),
    readings: year(seed).readings,
  };
}

/** What stands behind the readings of the demo shop of the same seed number. */
export function demoTruth(seed = DEMO_SEED): DemoTruth {
  return { seed, technicians: TECHNICIANS, gauges: GAUGES, jobs: year(seed).jobs };
}

function year(seed: number): { readings: Reading[]; jobs: JobTruth[] } {
  const days = workingDays(FIRST_DAY, LAST_DAY, TIME_ZONE);
  const book = new DayBook(days);
  const readings: Reading[] = [];
  const jobs: JobTruth[] = [];
  for (let index = 0; index < JOBS; index++) {
    const random = randomAt(seed, index);
    const day = dayOfJob(index, JOBS, days.length, random.between(0, 1));
    const { readings: read, truth } = runJob(WORKSHOP, `K${FIRST_JOB_NUMBER + index}`, day, book, random);
    readings.push(...read);
    jobs.push(truth);
  }
  readings.sort((a, b) => a.takenAt - b.takenAt);
  readings.forEach((reading, index) => (reading.line = index + 2));
  return { readings, jobs };
}

const SLUMP = [dayStart(SLUMP_FROM, TIME_ZONE), dayStart(SLUMP_TO, TIME_ZONE)] as const;

const WORKSHOP: Workshop = {
  technicians: TECHNICIANS,
  gauges: GAUGES,
  sheets: SHEETS,
  leftoverShare: (at) => (at >= SLUMP[0] && at < SLUMP[1] ? LEFTOVER_IN_SLUMP : LEFTOVER),
  reading: 'thorough',
};
