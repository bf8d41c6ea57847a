import { settingsOf } from './missets';
import type { BodyPrior, FinalDimension } from './types';

/** Where a shop without history starts: a repair leaves 0.8 mm, one point in twenty is off by about 8 mm. */
const START = { scatter: 0.8, flatScatter: 0.8, offShare: 0.05, offScatter: 8 } as const;

/** Worth of the starting point, in dimensions: it steadies a shop with little history and is nothing to one with much. */
const WORTH = 40;

/** Fewer dimensions than this leave the start almost as it is, and the page says so. */
const LEAST = 30;

/** No repair leaves points further off than this (as an sd, mm): what is recorded further off is a slip, not a body. */
const MOST_OFF = 12;

const STEPS = 60;

/**
 * Where bodies truly are after a repair, from the shop's own first measurings after it: each true deviation is N(0,
 * scatter²), or with probability `offShare` N(0, offScatter²); what is recorded adds an error of known sd, or a mis-set.
 * Largest posterior by expectation–maximisation over the pairings of body and setting, with the starting point worth
 * 40 dimensions. A height holds
 * the scatter at both zero stations too, by their levers. The dimensions of a job are taken as independent here, which costs a little precision, no bias: their
 * shared errors are counted in each one's variance.
 * Source: Dempster, Laird and Rubin (1977), J. R. Statist. Soc. B 39, 1–38.
 */
export function bodyPrior(dimensions: readonly FinalDimension[]): BodyPrior {
  let { scatter, flatScatter, offShare, offScatter }: Omit<BodyPrior, 'dimensions' | 'why'> = START;
  const seen = dimensions.map((dimension) => ({
    height: dimension.quantity === 'height',
    square: (dimension.deviation - dimension.known) ** 2,
    error: dimension.own ** 2 + dimension.shared.reduce((sum, { mm }) => sum + mm * mm, 0),
    spread: 1 + dimension.datum.reduce((sum, { weight }) => sum + weight * weight, 0),
    settings: settingsOf(dimension.missets),
  }));
  for (let step = 0; step < STEPS; step++) {
    const sums = { off: 0, offSquare: 0, height: 0, heightSquare: 0, flat: 0, flatSquare: 0 };
    for (const one of seen) {
      const sound = (one.height ? scatter : flatScatter) ** 2 * one.spread;
      const off = offScatter ** 2;
      let [soundWeight, soundSecond, offWeight, offSecond] = [0, 0, 0, 0];
      for (const { chance, variance } of one.settings) {
        const noise = one.error + variance;
        let weight = weightOf(one.square, sound + noise, (1 - offShare) * chance);
        soundWeight += weight;
        soundSecond += weight * secondOf(one.square, sound, noise);
        weight = weightOf(one.square, off + noise, offShare * chance);
        offWeight += weight;
        offSecond += weight * secondOf(one.square, off, noise);
      }
      const total = soundWeight + offWeight;
      if (!(total > 0)) continue;
      sums[one.height ? 'height' : 'flat'] += soundWeight / total;
      sums[one.height ? 'heightSquare' : 'flatSquare'] += soundSecond / total / one.spread;
      sums.off += offWeight / total;
      sums.offSquare += offSecond / total;
    }
    const offWorth = WORTH * START.offShare;
    const soundWorth = WORTH - offWorth;
    offShare = (sums.off + offWorth) / (sums.off + sums.height + sums.flat + WORTH);
    const steadied = (squares: number, count: number) =>
      Math.sqrt((squares + soundWorth * START.scatter ** 2) / (count + soundWorth));
    scatter = steadied(sums.heightSquare, sums.height);
    flatScatter = steadied(sums.flatSquare, sums.flat);
    offScatter = Math.min(
      MOST_OFF,
      Math.sqrt((sums.offSquare + offWorth * START.offScatter ** 2) / (sums.off + offWorth)),
    );
  }
  const why =
    seen.length < LEAST
      ? `Only ${seen.length} final dimensions: how well repairs come out is mostly assumed, not learned.`
      : null;
  return { scatter, flatScatter, offShare, offScatter, dimensions: seen.length, why };
}

/** Weight of one pairing with this variance of the reading. */
const weightOf = (square: number, total: number, chance: number): number =>
  total > 0 ? (chance * Math.exp(-square / (2 * total))) / Math.sqrt(total) : 0;

/** The expected square of the true deviation under one pairing. */
function secondOf(square: number, body: number, noise: number): number {
  const gain = body + noise > 0 ? body / (body + noise) : 0;
  return gain * gain * square + gain * noise;
}

/** What is left of a point that was put right, as this dimension sees it, mm. */
export const scatterFor = (prior: BodyPrior, { quantity }: FinalDimension): number =>
  quantity === 'height' ? prior.scatter : prior.flatScatter;
