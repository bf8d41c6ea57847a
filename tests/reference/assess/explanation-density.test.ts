import { describe, expect, it } from 'vitest';
import { componentAt, type Explanation } from '@/lib/assess/cause/explanation';
import { frameRound } from '@/lib/assess/cause/frame';
import { modelRound, type RoundModel } from '@/lib/assess/cause/model';
import { pairParts, zeroParts } from '@/lib/assess/cause/parts';
import { search } from '@/lib/assess/cause/search';
import { knownShop, sparse } from '@/tests/simulation/known';
import { roundOf } from '@/tests/simulation/round';
import reference from '../data/assess/explanation-density.json';
import { expectAbsolute } from '../stats/closeness';
import { logNormal } from './gaussian';

/*
 * Four stations (front 0, zeros 1100 and 2600, rear 3100 mm), clearance 100. The front gauge is hung three times,
 * the last time against a zero gauge that was set anew; the rear gauge first on the left side only.
 * The explanation: the rear zero point is damaged right, the rear on both sides; the front gauge was first
 * mis-set left, the rear gauge first without the clearance. The reference was worked out with the size band of
 * 9.3 ± 1.6 mm and a difference of the sides of 0.17 times the size; other sizes need new reference values.
 */
const round = roundOf({
  clearance: 100,
  hung: [
    { at: 1100, zero: true, left: 0.1, right: -0.2, gauge: 'G1' },
    { at: 2600, zero: true, left: 0, right: 0.3, gauge: 'G2' },
    { at: 0, left: 9.4, right: 7.9, n: [2, 1], gauge: 'G3' },
    { at: 3100, left: -92.6, n: [3, 0], gauge: 'G4', technician: 'T2' },
    { at: 0, left: 0.6, right: 8.3, n: [1, 2], gauge: 'G3', technician: 'T2' },
    { at: 1100, zero: true, left: 0.2, right: 0.1, n: [2, 1], gauge: 'G1' },
    { at: 0, left: 1.9, right: 7.7, gauge: 'G3' },
    { at: 3100, left: 8.1, right: -4.6, n: [2, 2], gauge: 'G4', technician: 'T2' },
  ],
});

const learned = sparse(
  knownShop({
    technicians: {
      T1: { reading: 0.5, setting: 0.9, bias: 0.3, biasSe: 0.12, missetRate: 0.05 },
      T2: { reading: 0.6, setting: 1.2, bias: -0.2, biasSe: 0.15, missetRate: 0.08 },
    },
    gauges: {
      G1: { bias: 0.1, biasSe: 0.1 },
      G2: { bias: -0.1, biasSe: 0.08 },
      G3: { bias: 0.2, biasSe: 0.05 },
      G4: { bias: -0.15, biasSe: 0.12 },
    },
  }),
);
learned.common = 0.45;
learned.bodies.before.scatter = 0.4;

/** What an explanation says, in words that do not depend on how the search numbers its hypotheses. */
function told(model: RoundModel, item: Explanation): string {
  const sign = (value: number): string => (value > 0 ? '+' : value < 0 ? '−' : '');
  const bodies = model.frame.stations.map((station, g) => {
    const body = componentAt(model.bodies, item.bodies[g] ?? 0);
    return `${station.x} ${body.pattern}${body.pattern === 'none' ? '' : ` ${body.width}${sign(body.left || body.right)}`}`;
  });
  const settings = [
    ...model.zeros.map((zero, k) => ({
      label: zero.pair.label,
      setting: componentAt(zero.settings, item.zeroSettings[k] ?? 0),
    })),
    ...model.steps.map((pair, i) => ({
      label: pair.pair.label,
      setting: componentAt(pair.settings, item.settings[i] ?? 0),
    })),
  ]
    .sort((a, b) => (a.label < b.label ? -1 : 1))
    .map(({ setting }) => `${setting.misset}${sign(setting.left)}`);
  return [...bodies, ...settings].join(', ');
}

const EXPLANATION =
  '1100 none, 2600 right fine+, 3100 both fine+, 0 none, ' +
  'ordinary, ordinary, left+, clearance-omitted−, ordinary, ordinary, ordinary, ordinary';

function explained(): { model: RoundModel; item: Explanation } {
  const frame = frameRound(round);
  if ('why' in frame) throw new Error(frame.why);
  const model = modelRound(frame, learned);
  const found = search(model, { depth: 22, breadth: 4000, share: 1 });
  const item = found.explanations.find(({ explanation }) => told(model, explanation) === EXPLANATION);
  if (!item) throw new Error(`The search did not keep the explanation “${EXPLANATION}”.`);
  return { model, item: item.explanation };
}

/** ln of the prior of that explanation, worked out from the parameters. */
function logPrior(): number {
  const { T1, T2 } = learned.technicians;
  if (!T1 || !T2) throw new Error('The shop knows both technicians.');
  const left = 0.7 / (0.7 + 0.3);
  const settings =
    (1 - T1.missetRate) ** 4 * // b1-01, 02, 06, 07
    (T1.missetRate * left * 0.5) * // 03: left, this sign
    (T2.missetRate * (1 - left)) * // 04: the clearance left out
    (1 - T2.missetRate) ** 2; // 05, 08
  const sizes = 0.5 * 0.5; // the sign of each of two damages
  const impacts = learned.bodies.before.impacts.reduce(
    (sum, { share, patterns }) =>
      sum + share * patterns.center.none * patterns.center.right * patterns.front.none * patterns.rear.both,
    0,
  );
  return Math.log(settings * sizes * impacts);
}

describe('the evidence of one explanation against a multivariate normal density of scipy', () => {
  const { model, item } = explained();

  it('has the outside density where mean and covariance are given', () => {
    expectAbsolute(logNormal(reference.y, reference.mean, reference.covariance), reference.logDensity, 1e-10);
  });

  it('weighs the explanation by its prior and that density', () => {
    expectAbsolute(item.logWeight, logPrior() + reference.logDensity, 1e-9);
  });

  it.each(reference.parts)(
    'splits $setup $side into gauge and body as the joint distribution does',
    (part) => {
      const side = part.side === 'L' ? 0 : 1;
      const step = model.steps.findIndex((pair) => pair.pair.label === part.setup);
      const pair = model.steps[step];
      const zero = model.zeros.find((one) => one.pair.label === part.setup);
      const found = pair
        ? pairParts(item, pair, componentAt(pair.settings, item.settings[step] ?? 0), side)
        : zero
          ? zeroParts(item, zero, side)
          : null;
      expect(found).not.toBeNull();
      expectAbsolute(found?.gauge, part.gauge, 1e-9, 'gauge');
      expectAbsolute(found?.body, part.body, 1e-9, 'body');
      expectAbsolute(found?.varGauge, part.varGauge, 1e-9, 'varGauge');
      expectAbsolute(found?.varBody, part.varBody, 1e-9, 'varBody');
      expectAbsolute(found?.covariance, part.covariance, 1e-9, 'covariance');
    },
  );
});
