import { isDeepStrictEqual } from 'node:util';
import type { JobShare } from './job-share';

/**
 * The technicians whose sums change where a job adds something else than before: everybody in it where it is new, gone
 * or counts at another time, else those whose own part of it is another. Sums of the others stand as they are.
 */
export function changedHands(before: JobShare | null, after: JobShare | null): Set<string> {
  const all = new Set([before, after].flatMap((share) => (share === null ? [] : techniciansOf(share))));
  if (before === null || after === null || !isDeepStrictEqual(placeOf(before), placeOf(after))) return all;
  return new Set(
    [...all].filter(
      (technician) => !isDeepStrictEqual(partOf(before, technician), partOf(after, technician)),
    ),
  );
}

/** Where a job counts: its months, its sheet, and its place in the order of time. */
const placeOf = ({ begunAt, sheet, rounds }: JobShare) => [begunAt, sheet, ...rounds.map(({ at }) => at)];

/** Everybody who adds anything in a job. */
const techniciansOf = ({ tallies, missets, rounds }: JobShare): string[] => [
  ...tallies.map(([technician]) => technician),
  ...missets.map(([technician]) => technician),
  ...rounds.flatMap(({ repeats, errors }) => [
    ...repeats.map(([technician]) => technician),
    ...errors.map(({ technician }) => technician),
  ]),
];

const partOf = ({ tallies, missets, rounds }: JobShare, asked: string): unknown => [
  tallies.filter(([technician]) => technician === asked),
  missets.filter(([technician]) => technician === asked),
  rounds.map(({ repeats, errors }) => [
    repeats.filter(([technician]) => technician === asked),
    errors.filter(({ technician }) => technician === asked),
  ]),
];
