import { wayOf } from './kinds';
import {
  type GaugeState,
  type Learned,
  MISSETS,
  type Misset,
  type Pattern,
  PATTERNS,
  type TechnicianHand,
} from './learned';
import { BROAD_SD, SIDE_DIFFERENCE, SIZE_BANDS, WIDE_BAND } from './sizes';
import type { Slip } from './slips';

export type Width = 'fine' | 'wide' | 'broad';

/**
 * One Gaussian hypothesis about a pair of values (left, right): how one setup was set, or where one station's
 * body is. Means in mm, variances in mm².
 */
export interface Component {
  /** `ordinary` for a setting without a slip. */
  misset: Misset | 'ordinary';
  /** In which way a setting is wrong (`wayOf`), 0 for an ordinary one and for a body. */
  way: number;
  pattern: Pattern;
  /** Index of the pattern into PATTERNS. */
  sides: number;
  /** Index of the size band, or −1 where the size is known or the hypothesis has none. */
  band: number;
  /** `fine` bands; `wide`: one band for each sign; `broad`: one for both signs. Known sizes are fine. */
  width: Width;
  left: number;
  right: number;
  varLeft: number;
  varRight: number;
  covariance: number;
  /** ln of the prior weight; for a body without its pattern's probability, which depends on the impact. */
  logPrior: number;
}

const settingComponent = (
  misset: Component['misset'],
  band: number,
  width: Width,
  left: number,
  right: number,
  varLeft: number,
  varRight: number,
  covariance: number,
  logPrior: number,
): Component => ({
  misset,
  way: wayOf(misset),
  pattern: 'none',
  sides: 0,
  band,
  width,
  left,
  right,
  varLeft,
  varRight,
  covariance,
  logPrior,
});

/** Mis-sets that any gauge can suffer, whatever the sheet and the round. */
const ALWAYS_POSSIBLE: ReadonlySet<Misset> = new Set(['both', 'left', 'right', 'other-mark']);

const NOTHING_MORE = [0, 0, 0] as const;

/** Mis-sets of unknown size by the hand that sets: the same for all its setups, so they need be laid out only once. */
export type UnknownSizes = Map<TechnicianHand, Component[]>;

/** How many slips there are of each way, and the ways in which this setup cannot be mis-set. */
interface CountedSlips {
  alike: ReadonlyMap<Misset, number>;
  impossible: readonly Misset[];
}

const counted = new WeakMap<readonly Slip[], CountedSlips>();

function countedSlips(slips: readonly Slip[]): CountedSlips {
  const known = counted.get(slips);
  if (known) return known;
  const alike = new Map<Misset, number>();
  for (const { misset } of slips) alike.set(misset, (alike.get(misset) ?? 0) + 1);
  const impossible = MISSETS.filter((misset) => !ALWAYS_POSSIBLE.has(misset) && !alike.has(misset));
  const made = { alike, impossible };
  counted.set(slips, made);
  return made;
}

/**
 * All hypotheses about one setting, the ordinary one first. `broad` lumps unknown sizes into one normal distribution.
 * @param slips the recognisable ones of this setup.
 * @param known keeps those of unknown size for the next setup of the same hand, all of them broad or all fine.
 */
export function settingComponents(
  slips: readonly Slip[],
  hand: TechnicianHand,
  gauge: GaugeState,
  learned: Learned,
  broad: boolean,
  known?: UnknownSizes,
): Component[] {
  const variance = hand.setting ** 2;
  const shared = learned.common * variance;
  const components: Component[] = [];
  const push = (
    misset: Misset | 'ordinary',
    band: number,
    left: number,
    right: number,
    extra: readonly [number, number, number],
    weight: number,
  ): void => {
    if (weight <= 0) return;
    components.push(
      settingComponent(
        misset,
        band,
        broad ? 'broad' : 'fine',
        left,
        right,
        variance + extra[0],
        variance + extra[1],
        shared + extra[2],
        Math.log(weight),
      ),
    );
  };
  const { alike, impossible: never } = countedSlips(slips);
  const rate = (misset: Misset): number => hand.missetRate * learned.missets[misset];
  // A slip that cannot happen here (no clearance to forget) leaves the others' rates as they are.
  let impossible = 0;
  for (const misset of never) impossible += rate(misset);
  push('ordinary', -1, 0, 0, NOTHING_MORE, 1 - hand.missetRate + impossible);
  const laidOut = known?.get(hand);
  const from = components.length;
  const sides: [Misset, number, number][] = [
    ['both', 1, 1],
    ['left', 1, 0],
    ['right', 0, 1],
  ];
  if (laidOut) for (const one of laidOut) components.push(one);
  for (const [misset, left, right] of laidOut ? [] : sides) {
    if (broad) {
      const v = BROAD_SD ** 2;
      push(misset, -1, 0, 0, [v * left, v * right, v * left * right], rate(misset));
      continue;
    }
    SIZE_BANDS.forEach(({ centre, sd }, band) => {
      const weight = (rate(misset) * (learned.missetSizes[band] ?? 0)) / 2;
      for (const sign of [-1, 1]) {
        push(
          misset,
          band,
          sign * centre * left,
          sign * centre * right,
          [sd ** 2 * left, sd ** 2 * right, sd ** 2 * left * right],
          weight,
        );
      }
    });
  }
  if (!laidOut) known?.set(hand, components.slice(from));
  // Two rare events are told apart by what they do to the datum, not by their names: unknown sizes stand for all.
  if (broad) return components;
  for (const sign of [-1, 1]) {
    const v = gauge.markSd ** 2;
    push('other-mark', -1, sign * gauge.mark, sign * gauge.mark, [v, v, v], rate('other-mark') / 2);
  }
  for (const { misset, left, right } of slips)
    push(misset, -1, left, right, NOTHING_MORE, rate(misset) / (alike.get(misset) ?? 1));
  return components;
}

/**
 * The same hypotheses about a setting by another gauge: only where its other mark lies is its own.
 * @param settings fine ones, the ordinary one first.
 */
export function withMarkOf(gauge: GaugeState, settings: readonly Component[]): Component[] {
  const found = settings.slice();
  const [ordinary] = settings;
  let sign = -1;
  for (let index = 0; index < found.length; index++) {
    const one = found[index];
    if (one?.misset !== 'other-mark' || !ordinary) continue;
    const v = gauge.markSd ** 2;
    found[index] = settingComponent(
      one.misset,
      one.band,
      one.width,
      sign * gauge.mark,
      sign * gauge.mark,
      ordinary.varLeft + v,
      ordinary.varRight + v,
      ordinary.covariance + v,
      one.logPrior,
    );
    sign = 1;
  }
  return found;
}

/** How each pattern of damage moves the two sides of a station, left and right in units of its size. */
const WAYS: readonly [Pattern, number, number][] = [
  ['left', 1, 0],
  ['right', 0, 1],
  ['both', 1, 1],
  ['opposed', 1, -1],
];

/**
 * All hypotheses about where one station's body is, the undamaged one first; priors within each pattern. Opposed
 * damage, as a twist leaves it, has both signs: left up with right down, and the other way about. It has no broad
 * hypothesis: as one of two rare events at the zero stations it is not considered.
 */
export function bodyComponents(scatter: number, learned: Learned): Component[] {
  const variance = scatter ** 2;
  const components: Component[] = [
    {
      misset: 'ordinary',
      way: 0,
      pattern: 'none',
      sides: 0,
      band: -1,
      width: 'fine',
      left: 0,
      right: 0,
      varLeft: variance,
      varRight: variance,
      covariance: 0,
      logPrior: 0,
    },
  ];
  const bands: { centre: number; sd: number; band: number; width: Width; weight: number }[] = [
    ...SIZE_BANDS.map((size, band) => ({
      ...size,
      band,
      width: 'fine' as const,
      weight: (learned.damageSizes[band] ?? 0) / 2,
    })),
    { ...WIDE_BAND, band: -1, width: 'wide', weight: 0.5 },
    { centre: 0, sd: BROAD_SD, band: -1, width: 'broad', weight: 1 },
  ];
  for (const [pattern, left, right] of WAYS) {
    const [onLeft, onRight] = [Math.abs(left), Math.abs(right)];
    for (const { centre, sd, band, width, weight } of bands) {
      if (weight <= 0 || (pattern === 'opposed' && width === 'broad')) continue;
      for (const sign of width === 'broad' ? [1] : [-1, 1]) {
        const differs = onLeft * onRight * (SIDE_DIFFERENCE * (centre || sd)) ** 2;
        components.push({
          misset: 'ordinary',
          way: 0,
          pattern,
          sides: PATTERNS.indexOf(pattern),
          band,
          width,
          left: sign * centre * left,
          right: sign * centre * right,
          varLeft: variance + (sd ** 2 + differs) * onLeft,
          varRight: variance + (sd ** 2 + differs) * onRight,
          covariance: sd ** 2 * left * right,
          logPrior: Math.log(weight),
        });
      }
    }
  }
  return components;
}
