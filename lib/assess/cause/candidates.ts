import type { Beam } from './beam';
import { expectReadings, nothingExpected } from './expected';
import { componentAt, patternProbability } from './explanation';
import { PATTERNS } from './learned';
import { nextKind } from './kinds';
import { type Candidates, Listed } from './listed';
import { damages, type PairModel, type RoundModel, sidesOf } from './model';
import { scan } from './scan';

// Rounds are searched one after another, so all of them can use the same room.
const list = new Listed();
/** ln of each pattern's probability at the station that is met, by group of explanations. */
let patterns = new Float64Array(64);
const base = nothingExpected();

/**
 * Every explanation in `beam` with every hypothesis about the next setup, each weighted by the exact density
 * of the two readings, and by what is foreseen of the setups after it. Hypotheses that cannot come within `depth` of the best are bounded, not listed: with the
 * likeliest explanations first in the beam these are most. What is returned holds until the next call.
 */
export function candidates(model: RoundModel, beam: Beam, pair: PairModel, depth: number): Candidates {
  // A reading beyond all hypotheses still gets its nearest one: then the reach is widened until some fits.
  if (pair.first) patternWeights(model, beam, pair.station);
  for (let reach = 2 * (depth + 6); reach < 1e12; reach *= 4) {
    list.begin((beam.logWeight[0] ?? 0) + (beam.outlook[0] ?? 0));
    const under = { list, pair, base, patterns, reach, depth };
    for (let index = 0; index < beam.count; index++) {
      expectReadings(beam, index, pair, base);
      const group = (beam.group[index] ?? 0) * PATTERNS.length;
      scan(under, index, (beam.logWeight[index] ?? -Infinity) + (beam.outlook[index] ?? 0), group);
    }
    if (list.count > 0) break;
  }
  for (let i = 0; i < list.count; i++) {
    const sides = pair.places.sides[list.place[i] ?? 0] ?? 0;
    const way = pair.columns.way[list.row[i] ?? 0] ?? 0;
    list.kind[i] = nextKind(beam.kind[list.from[i] ?? 0] ?? 0, sides, way);
  }
  list.logUnlisted = list.unlisted.logSum;
  return list;
}

/** ln of each pattern's probability at a station: the impact so far, and the lengths whose last end is here. */
function patternWeights(model: RoundModel, beam: Beam, station: number): void {
  const { groupCount, impactCount, impacts, leader, pickCount, picks } = beam;
  const kinds = PATTERNS.length;
  if (patterns.length < groupCount * kinds) patterns = new Float64Array(2 * groupCount * kinds);
  for (let group = 0; group < groupCount; group++) {
    const at = group * impactCount;
    const to = group * kinds;
    for (let pattern = 0; pattern < kinds; pattern++) {
      let sum = 0;
      for (let c = 0; c < impactCount; c++) {
        sum += (impacts[at + c] ?? 0) * patternProbability(model, c, station, pattern);
      }
      patterns[to + pattern] = Math.log(sum);
    }
    const pick = (leader[group] ?? 0) * pickCount;
    for (const length of model.lengths) {
      if (length.last !== station) continue;
      let elsewhere = false;
      let here = 0;
      for (const [end, side] of length.ends) {
        if (end === station) here |= side === 0 ? 1 : 2;
        else if (damages(componentAt(model.bodies, picks[pick + end] ?? 0).sides, side)) elsewhere = true;
      }
      for (let pattern = 0; pattern < kinds; pattern++) {
        patterns[to + pattern] =
          (patterns[to + pattern] ?? 0) +
          (elsewhere || (sidesOf(pattern) & here) !== 0 ? length.damaged : length.sound);
      }
    }
  }
}
