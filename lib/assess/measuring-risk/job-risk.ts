import { MM_NOISE } from '@/lib/measure';
import { normalCdfByTable } from '@/lib/stats/distributions';
import { normalLattice } from '@/lib/stats/numeric/normal-lattice';
import { scatterFor } from './body-prior';
import { settingsOf } from './missets';
import { proposalOf } from './proposal';
import type { BodyPrior, FinalDimension, FinalJob, JobRisk, SharedError } from './types';

/**
 * Points over the shared errors of a job. Against 65,536 of them twelve jobs of twenty heights and seventeen shared errors
 * differed by 0.003 in the middle and 0.011 at most; with four shared errors and a fine grid by less than 0.004.
 */
const POINTS = 256;

/**
 * P(every dimension of a job is truly within tolerance), given all its readings.
 *
 * Given what its dimensions share (datum, both the gauges' settings and the bodies at the zero stations; setups; unknown
 * biases) the dimensions are independent, and each is a
 * mixture of normals (body put right or off, setting ordinary or one kind of mis-set), known in closed form. Over the shared
 * errors the product is integrated by a fixed lattice of normal points around where the readings put them, each weighted
 * by its posterior density over that of the lattice (importance weights); no chance is involved.
 */
export function jobRisk(job: FinalJob, prior: BodyPrior, points = POINTS): JobRisk {
  const dimensions = job.dimensions.map(withOwn(job.dimensions));
  const errors = [
    ...new Set(dimensions.flatMap(({ shared, datum }) => [...shared, ...datum].map(({ key }) => key))),
  ];
  const place = new Map(errors.map((key, i) => [key, i]));
  const rowOf = (list: readonly SharedError[]) => {
    const row = new Float64Array(errors.length);
    for (const { key, mm } of list) row[place.get(key) ?? 0] = (row[place.get(key) ?? 0] ?? 0) + mm;
    return row;
  };
  const bodies = dimensions.map(({ datum }) =>
    rowOf(datum.map(({ key, weight }) => ({ key, mm: weight * prior.scatter }))),
  );
  const loadings = dimensions.map(({ shared }, i) =>
    rowOf(shared).map((mm, k) => mm + (bodies[i]?.[k] ?? 0)),
  );
  const pairings = dimensions.map((dimension) => pairingsOf(dimension, prior));
  const proposal = proposalOf(dimensions, loadings, prior);
  const lattice = errors.length === 0 ? [new Float64Array(0)] : normalLattice(errors.length, points);
  const count = dimensions.length;
  // Point after point: a list of its own for each is most of what all this takes of the memory.
  const within = new Float64Array(lattice.length * count);
  const logs = lattice.map((z, point) => {
    const { errors: f, logWeight } = proposal.at(z);
    let log = logWeight;
    dimensions.forEach(({ deviation, known, tolerance }, i) => {
      const y = deviation - known - dot(loadings[i] ?? z, f);
      const carried = dot(bodies[i] ?? z, f);
      const { density, probability } = trulyWithin(pairings[i] ?? [], y, carried, tolerance);
      log += Math.log(density);
      within[point * count + i] = probability;
    });
    return log;
  });
  const highest = logs.reduce((most, log) => Math.max(most, log), -Infinity);
  let total = 0;
  let right = 0;
  const each = dimensions.map(() => 0);
  logs.forEach((log, point) => {
    const weight = Math.exp(log - highest);
    let all = 1;
    for (let i = 0; i < count; i++) {
      const p = within[point * count + i] ?? 0;
      all *= p;
      each[i] = (each[i] ?? 0) + weight * p;
    }
    total += weight;
    right += weight * all;
  });
  return {
    job: job.job,
    calledRight: job.right,
    again: job.again,
    trulyRight: right / total,
    dimensions: dimensions.map(({ name, within }, i) => ({
      name,
      within,
      trulyWithin: (each[i] ?? 0) / total,
    })),
  };
}

/** A dimension whose errors that no other dimension has are counted as its own. */
function withOwn(all: readonly FinalDimension[]): (one: FinalDimension) => FinalDimension {
  const holders = new Map<string, number>();
  for (const { shared } of all) {
    for (const key of new Set(shared.map((error) => error.key)))
      holders.set(key, (holders.get(key) ?? 0) + 1);
  }
  return (one) => {
    const alone = one.shared.filter(({ key }) => holders.get(key) === 1);
    return {
      ...one,
      own: Math.hypot(one.own, ...alone.map(({ mm }) => mm)),
      shared: one.shared.filter(({ key, mm }) => holders.get(key) !== 1 && mm !== 0),
    };
  };
}

/** One pairing of body and setting: everything of it that does not depend on the reading. */
interface Pairing {
  /** Chance / sd of the reading, and 1 / (2 variance) of it. */
  factor: number;
  half: number;
  /** True deviation given the reading: gain × reading, with this sd, mm. */
  gain: number;
  sd: number;
  /** Of the reading under way. */
  weight: number;
}

function pairingsOf(dimension: FinalDimension, prior: BodyPrior): Pairing[] {
  const { own, missets } = dimension;
  const scatter = scatterFor(prior, dimension);
  return [false, true].flatMap((off) =>
    settingsOf(missets).flatMap((setting) => {
      const body = (off ? prior.offScatter : scatter) ** 2;
      const noise = own ** 2 + setting.variance;
      const total = body + noise;
      const chance = (off ? prior.offShare : 1 - prior.offShare) * setting.chance;
      if (!(chance > 0 && total > 0)) return [];
      return [
        {
          factor: chance / Math.sqrt(total),
          half: 1 / (2 * total),
          gain: body / total,
          sd: Math.sqrt((body * noise) / total),
          weight: 0,
        },
      ];
    }),
  );
}

/** A pairing with less weight than this, as a share, cannot change a probability that anybody reads. */
const NEGLIGIBLE = 1e-5;

/** Of one dimension, the shared errors given: how likely its reading was, and P(truly within), `carried` by the datum. */
function trulyWithin(
  pairings: readonly Pairing[],
  y: number,
  carried: number,
  tolerance: number,
): { density: number; probability: number } {
  let density = 0;
  for (let i = 0; i < pairings.length; i++) {
    const pairing = pairings[i];
    if (!pairing) break;
    const weight = pairing.factor * Math.exp(-y * y * pairing.half);
    pairing.weight = weight;
    density += weight;
  }
  if (!(density > 0)) return { density: Number.MIN_VALUE, probability: 0 };
  let inside = 0;
  let counted = 0;
  for (const { weight, gain, sd } of pairings) {
    if (weight < NEGLIGIBLE * density) continue;
    counted += weight;
    inside += weight * between(carried + gain * y, sd, tolerance);
  }
  return { density, probability: inside / counted };
}

/** P(|X| ≤ tolerance) of a normal X, absolute error below 4e-11. */
function between(mean: number, sd: number, tolerance: number): number {
  if (sd === 0) return Math.abs(mean) <= tolerance + MM_NOISE ? 1 : 0;
  return normalCdfByTable((tolerance - mean) / sd) - normalCdfByTable((-tolerance - mean) / sd);
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] ?? 0) * (b[i] ?? 0);
  return sum;
}
