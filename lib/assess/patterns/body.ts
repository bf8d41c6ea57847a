import type { Section } from '@/lib/measure/types';
import type { JudgedRound } from '../cause/judge';
import type { Part } from './mixture';

/** A linear contrast of body heights: weights by entry of the state. */
export type Contrast = ReadonlyMap<number, number>;

/** One station with what was read of it. */
export interface BodyStation {
  x: number;
  section: Section;
  zero: boolean;
  /** Entries of the state: where the body is, left and right. */
  at: [number, number];
  /** Which sides were read. */
  read: [boolean, boolean];
  /** Deviations as read last, mm. */
  asRead: [number, number];
  tolerance: number;
}

/** Where the body may be, by the stations of a judged round, from front to rear. */
export interface Body {
  stations: BodyStation[];
  /** The two zero stations, front and rear. */
  zeros: [BodyStation, BodyStation];
  judged: JudgedRound;
}

export function bodyOf(judged: JudgedRound): Body | null {
  const firstOther = 4 + 2 * judged.model.zeros.length;
  const stations = judged.frame.stations.map(({ x, section, zero, pairs }, g): BodyStation => {
    const at = g < 2 ? 2 * g : firstOther + 2 * (g - 2);
    const last = (side: 0 | 1) => pairs.filter(({ n }) => n[side] > 0).at(-1);
    return {
      x,
      section: zero ? 'center' : section,
      zero,
      at: [at, at + 1],
      read: [last(0) !== undefined, last(1) !== undefined],
      asRead: [last(0)?.y[0] ?? 0, last(1)?.y[1] ?? 0],
      tolerance: Math.max(...pairs.map(({ tolerance }) => Math.max(...tolerance))),
    };
  });
  const [front, rear] = stations;
  if (front === undefined || rear === undefined) return null;
  return { stations: [...stations].sort((a, b) => a.x - b.x), zeros: [front, rear], judged };
}

/** Sums weighted contrasts into one. */
export function sumOf(...terms: readonly (readonly [number, Contrast])[]): Contrast {
  const sum = new Map<number, number>();
  for (const [factor, contrast] of terms)
    for (const [at, weight] of contrast) sum.set(at, (sum.get(at) ?? 0) + factor * weight);
  return sum;
}

export const entry = (at: number): Contrast => new Map([[at, 1]]);

export const meanOfAll = (contrasts: readonly Contrast[]): Contrast =>
  sumOf(...contrasts.map((one) => [1 / contrasts.length, one] as const));

/** What the contrast comes to in the deviations as they were read. */
export function asReadBy({ stations }: Body, contrast: Contrast): number {
  let sum = 0;
  for (const { at, asRead } of stations)
    for (const s of [0, 1] as const) sum += (contrast.get(at[s]) ?? 0) * asRead[s];
  return sum;
}

/** The posterior of some contrasts together: one normal distribution for each explanation of the round. */
export function partsOf({ judged }: Body, contrasts: readonly Contrast[]): Part[] {
  const n = contrasts.length;
  const rows = contrasts.map((contrast) => [...contrast].filter(([, weight]) => weight !== 0));
  const entries = [...new Set(rows.flatMap((row) => row.map(([at]) => at)))];
  return judged.found.explanations.map(({ weight, explanation }) => {
    const size = explanation.mean.length;
    const mean = new Float64Array(n);
    const covariance = new Float64Array(n * n);
    // With every entry of the state first, then with the other contrast.
    const withEntry = new Float64Array(size);
    rows.forEach((row, i) => {
      for (const [at, w] of row) mean[i] = (mean[i] ?? 0) + w * (explanation.mean[at] ?? 0);
      for (const other of entries) {
        let sum = 0;
        for (const [at, w] of row) sum += w * (explanation.covariance[at * size + other] ?? 0);
        withEntry[other] = sum;
      }
      for (let j = 0; j <= i; j++) {
        let sum = 0;
        for (const [other, v] of rows[j] ?? []) sum += v * (withEntry[other] ?? 0);
        covariance[i * n + j] = covariance[j * n + i] = sum;
      }
    });
    return { weight, mean, covariance };
  });
}

/** Largest tolerance of the stations in a question: a pattern has to be beyond it. */
export const thresholdOf = (stations: readonly BodyStation[]): number =>
  Math.max(...stations.map(({ tolerance }) => tolerance));
