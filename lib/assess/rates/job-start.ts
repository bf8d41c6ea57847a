import { SECTIONS, type Job, type Section } from '@/lib/measure';
import { recordedDimensions } from '../recorded';
import type { RecordedDimension } from '../types';

/**
 * Where a job was hit, by its readings before the repair: the section that carries most of the deviation, `none` where
 * nothing was out of tolerance there, `unknown` where nothing was measured or what was out belongs to no section.
 */
export type ImpactZone = Section | 'none' | 'unknown';
export const IMPACT_ZONES: readonly ImpactZone[] = [...SECTIONS, 'none', 'unknown'];

/** How hard a job was when it came in, from the last round before the repair. */
export interface JobStart {
  measured: boolean;
  /** Dimensions out of tolerance. */
  out: number;
  /** The largest deviation among them, in tolerances (3 mm at ±3 mm is 1), at most `MOST_TOLERANCES`; 0 for none. */
  size: number;
  zone: ImpactZone;
}

/**
 * No dimension counts for more than this many tolerances: a tape read 100 mm off is one bad reading, not the place and
 * the size of the damage.
 */
export const MOST_TOLERANCES = 10;

/**
 * What a job started with. Each dimension out of tolerance weighs |deviation| / tolerance, at most `MOST_TOLERANCES`;
 * the zone is the section with the largest sum, of equal ones the foremost. Deviations count as recorded: a mis-set gauge
 * that nobody hung again looks like damage here.
 */
export function jobStart(job: Job): JobStart {
  const last = job.rounds.filter(({ stage }) => stage === 'before').at(-1);
  if (last === undefined) return { measured: false, out: 0, size: 0, zone: 'unknown' };
  const out = recordedDimensions(last).filter(({ within }) => !within);
  const sizes = out.map(inTolerances);
  return { measured: true, out: out.length, size: Math.max(0, ...sizes), zone: zoneOf(out) };
}

function zoneOf(out: readonly RecordedDimension[]): ImpactZone {
  if (out.length === 0) return 'none';
  let zone: ImpactZone = 'unknown';
  let most = 0;
  for (const section of SECTIONS) {
    const weight = out
      .filter((dimension) => dimension.section === section)
      .reduce((sum, dimension) => sum + inTolerances(dimension), 0);
    if (weight > most) [zone, most] = [section, weight];
  }
  return zone;
}

const inTolerances = ({ deviation, tolerance }: RecordedDimension): number =>
  tolerance > 0 ? Math.min(MOST_TOLERANCES, Math.abs(deviation) / tolerance) : MOST_TOLERANCES;
