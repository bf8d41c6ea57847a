import type { BodyPrior, FinalDimension } from './types';

/** Where a shop without history starts: a repair leaves 0.8 mm, one point in twenty is off by about 8 mm. */
const START = { scatter: 0.8, offShare: 0.05, offScatter: 8 } as const;

/** Worth of the starting point, in dimensions: it steadies a shop with little history and is nothing to one with much. */
const WORTH = 40;

/** Fewer dimensions than this leave the start almost as it is, and the page says so. */
const LEAST = 30;

const STEPS = 60;

/**
 * Where bodies truly are after a repair, from the shop's own first measurings after it: each true deviation is N(0,
 * scatter²), or with probability `offShare` N(0, offScatter²); what is recorded adds an error of known sd, or a mis-set.
 * Largest posterior by expectation–maximisation over the four pairings of body and setting, with the starting point worth
 * 40 dimensions. The dimensions of a job are taken as independent here, which costs a little precision, no bias: their
 * shared errors are counted in each one's variance.
 * Source: Dempster, Laird and Rubin (1977), J. R. Statist. Soc. B 39, 1–38.
 */
export function bodyPrior(dimensions: readonly FinalDimension[]): BodyPrior {
  let { scatter, offShare, offScatter }: Pick<BodyPrior, 'scatter' | 'offShare' | 'offScatter'> = START;
  const seen = dimensions.map((dimension) => ({
    square: (dimension.deviation - dimension.known) ** 2,
    error: dimension.own ** 2 + dimension.shared.reduce((sum, { mm }) => sum + mm * mm, 0),
    chance: dimension.misset.chance,
    extra: dimension.misset.sd ** 2,
  }));
  for (let step = 0; step < STEPS; step++) {
    const sums = { off: 0, sound: 0, offSquare: 0, soundSquare: 0 };
    for (const one of seen) {
      const parts = [
        part(one, scatter ** 2, (1 - offShare) * (1 - one.chance), 0),
        part(one, scatter ** 2, (1 - offShare) * one.chance, one.extra),
        part(one, offScatter ** 2, offShare * (1 - one.chance), 0),
        part(one, offScatter ** 2, offShare * one.chance, one.extra),
      ];
      const total = parts.reduce((sum, { weight }) => sum + weight, 0);
      if (!(total > 0)) continue;
      parts.forEach(({ weight, second }, i) => {
        const share = weight / total;
        if (i < 2) {
          sums.sound += share;
          sums.soundSquare += share * second;
        } else {
          sums.off += share;
          sums.offSquare += share * second;
        }
      });
    }
    const offWorth = WORTH * START.offShare;
    const soundWorth = WORTH - offWorth;
    offShare = (sums.off + offWorth) / (sums.off + sums.sound + WORTH);
    scatter = Math.sqrt((sums.soundSquare + soundWorth * START.scatter ** 2) / (sums.sound + soundWorth));
    offScatter = Math.sqrt((sums.offSquare + offWorth * START.offScatter ** 2) / (sums.off + offWorth));
  }
  const why =
    seen.length < LEAST
      ? `Only ${seen.length} final dimensions: how well repairs come out is mostly assumed, not learned.`
      : null;
  return { scatter, offShare, offScatter, dimensions: seen.length, why };
}

/** Weight of one pairing, and the expected square of the true deviation under it. */
function part(
  { square, error }: { square: number; error: number },
  body: number,
  chance: number,
  extra: number,
): { weight: number; second: number } {
  const noise = error + extra;
  const total = body + noise;
  const gain = total > 0 ? body / total : 0;
  return {
    weight: total > 0 ? (chance * Math.exp(-square / (2 * total))) / Math.sqrt(total) : 0,
    second: gain * gain * square + gain * noise,
  };
}
