import { lengthEnds } from '@/lib/measure/dimension';
import type { Round, Section, Side } from '@/lib/measure/types';
import { damages, handOf } from '../cause/model';
import { patternAt } from '../cause/explanation';
import { phaseOf } from '../cause/frame';
import type { JudgedRound } from '../cause/judge';
import type { Learned } from '../cause/learned';
import { lengthEvidence, lengthSd } from '../cause/lengths';
import { LENGTH_BANDS } from '../cause/sizes';
import type { PointPlace } from './types';

/** A point at one end of a length. */
export interface End {
  letter: string;
  side: Side;
  station: number;
}

/** By how much a length of the vehicle differs from the sheet, given its readings: a mixture of normals, mm. */
export interface Change {
  point: string;
  nominal: number;
  tolerance: number;
  section: Section | null;
  gauge: string;
  /** Mean deviation over its setups, mm. */
  asRead: number;
  /** Both ends, front first; null where the sheet does not say their side or place. */
  ends: [End, End] | null;
  components: { weight: number; mean: number; variance: number }[];
}

/** Components below this weight are left out. */
const NEGLIGIBLE = 5e-3;

/** What is known of every length that was read in a round. */
export function changesOf(
  round: Round,
  learned: Learned,
  judged: JudgedRound | null,
  points: readonly PointPlace[],
): Change[] {
  const placeOf = places(round, points);
  const read = new Map<
    string,
    Omit<Change, 'components'> & { technician: string; setups: number; n: number }
  >();
  for (const setup of round.setups) {
    for (const seen of setup.observations) {
      if (seen.quantity !== 'length') continue;
      const key = `${seen.point} ${seen.nominal}`;
      const known = read.get(key);
      if (known) {
        known.asRead = (known.asRead * known.setups + seen.deviation) / (known.setups + 1);
        known.n += seen.n;
        known.setups++;
        known.gauge = setup.gauge;
        continue;
      }
      const { point, nominal, tolerance, section, deviation, n } = seen;
      const ends = endsOf(point, placeOf);
      read.set(key, {
        point,
        nominal,
        tolerance,
        section,
        ends,
        n,
        asRead: deviation,
        gauge: setup.gauge,
        technician: setup.technician,
        setups: 1,
      });
    }
  }
  return [...read.values()].map(({ technician, setups, n, ...change }, index) => ({
    ...change,
    components: componentsOf(
      { y: change.asRead, n, setups },
      { learned, technician, scatter: learned.bodies[phaseOf(round)].scatter },
      (out) => outProbability(judged, index, out),
    ),
  }));
}

/**
 * The change of a length as a mixture: sound, where what lengths vary by is shared between the vehicle (no more than
 * its points scatter, and no more than half) and the setting; or out, by one of the bands of `sizes.ts`.
 */
function componentsOf(
  { y, n, setups }: { y: number; n: number; setups: number },
  { learned, technician, scatter }: { learned: Learned; technician: string; scatter: number },
  probabilityOut: (out: { damaged: number; sound: number }) => number,
): Change['components'] {
  const hand = handOf(learned, technician);
  const sd = lengthSd({ n, setups }, hand, learned);
  const variance = sd ** 2;
  const own = Math.min(scatter ** 2, variance / 2);
  const { outGivenDamage, outGivenSound } = lengthEvidence(
    { y, n, setups, point: '', section: null, technician, tolerance: 0, ends: [] },
    hand,
    learned,
  );
  const out = probabilityOut({ damaged: outGivenDamage, sound: outGivenSound });
  const bands = LENGTH_BANDS.flatMap(({ centre, sd: spread, weight }) =>
    [centre, -centre].map((mean) => {
      const total = variance + spread ** 2;
      const gain = spread ** 2 / total;
      const density = Math.exp((-0.5 * (y - mean) ** 2) / total) / Math.sqrt(total);
      return { weight: weight * density, mean: mean + gain * (y - mean), variance: spread ** 2 * (1 - gain) };
    }),
  );
  const sum = bands.reduce((all, { weight }) => all + weight, 0);
  const components = [
    { weight: 1 - out, mean: (own / variance) * y, variance: own * (1 - own / variance) },
    // Beyond every band all bands underflow alike; what was read is then the best that is known.
    ...(sum > 0
      ? bands.map((band) => ({ ...band, weight: (out * band.weight) / sum }))
      : [{ weight: out, mean: y, variance }]),
  ].filter(({ weight }) => weight > NEGLIGIBLE);
  const kept = components.reduce((all, { weight }) => all + weight, 0);
  return components.map((one) => ({ ...one, weight: one.weight / kept }));
}

/** P(a length has changed | everything read), over the explanations of the heights at its ends. */
function outProbability(
  judged: JudgedRound | null,
  index: number,
  out: { damaged: number; sound: number },
): number {
  const evidence = judged?.frame.lengths[index];
  const length = judged?.model.lengths.find((one) => one.evidence === evidence);
  if (judged === null || length === undefined) return out.sound;
  const damaged = judged.found.explanations.reduce((sum, { weight, explanation }) => {
    const hit = length.ends.some(([station, side]) =>
      damages(patternAt(judged.model, explanation, station), side),
    );
    return sum + (hit ? weight : 0);
  }, 0);
  return damaged * out.damaged + (1 - damaged) * out.sound;
}

type PlaceOf = (letter: string, side: Side | null) => End | null;

/** Where a letter is, by the heights of the round and by what is known of the sheet's points. */
function places(round: Round, points: readonly PointPlace[]): PlaceOf {
  const known = new Map<string, Map<Side, number>>();
  const put = (letter: string, side: Side | null, station: number | null) => {
    if (side === null || station === null) return;
    const sides = known.get(letter) ?? new Map<Side, number>();
    known.set(letter, sides.set(side, station));
  };
  for (const { letter, side, station } of points) put(letter, side, station);
  for (const { observations } of round.setups)
    for (const { quantity, point, side, station } of observations)
      if (quantity === 'height') put(point, side, station);
  return (letter, named) => {
    const sides = known.get(letter);
    const [only] = sides?.size === 1 ? [...sides.keys()] : [];
    const side = named ?? only;
    const station = side === undefined ? undefined : sides?.get(side);
    return side === undefined || station === undefined ? null : { letter, side, station };
  };
}

function endsOf(point: string, placeOf: PlaceOf): [End, End] | null {
  const [a, b] = (lengthEnds(point) ?? []).map(({ point: letter, side }) => placeOf(letter, side));
  if (!a || !b) return null;
  return a.station <= b.station ? [a, b] : [b, a];
}

/** The place of both ends of every length of a round, by name; for pictures too. */
export function lengthPlaces(
  round: Round,
  points: readonly PointPlace[],
): (point: string) => [End, End] | null {
  const placeOf = places(round, points);
  return (point) => endsOf(point, placeOf);
}
