import { handFigures } from './hand-figures';
import {
  MEASURES,
  type Figure,
  type Measure,
  type Scenario,
  type WhatIf,
  type WorkingHand,
  type WorkingShop,
} from './types';

const METHOD =
  'Every dimension of an ordinary job is integrated over where its body may be, over ordinary settings and mis-sets, and ' +
  'over the biases of the gauges in service; the heights of a job share their datum. Nothing is simulated, so the same ' +
  'shop gives the same numbers. The intervals come from the standard errors of setting, mis-set rate and repair scatter ' +
  '(to first order). The minutes are rules of thumb. A second hanging is taken as independent of the first but for the ' +
  'gauge, the datum and the hand’s bias.';

/** 97.5 % of the standard normal distribution. */
const Z = 1.959963984540054;

/** The shop as it works now, and under other rules, side by side. The first scenario is what the others are set against. */
export function whatIf(shop: WorkingShop, scenarios: readonly Scenario[]): WhatIf {
  const hands = shop.hands.filter(({ share }) => share > 0);
  if (hands.length === 0 || scenarios.length === 0) {
    return { rows: [], method: METHOD, why: 'Nobody has measured a job yet.' };
  }
  if (shop.stations.length === 0) {
    return { rows: [], method: METHOD, why: 'No job has a height away from the zero stations.' };
  }
  const found = new Map<string, Record<Measure, number>>();
  const figures = (other: WorkingShop, moved: number | null, scenario: Scenario, i: number) =>
    shopFigures(other, (hand, others) => {
      // A hand that was not moved, and is not hung after by one that was, has the figures that it had.
      const same =
        moved !== null &&
        shop.hands[moved]?.technician !== hand.technician &&
        scenario.rehangBy !== 'another';
      const key = same ? `${i} ${hand.technician}` : null;
      const known = key === null ? undefined : found.get(key);
      const own = known ?? handFigures(hand, others, other, scenario);
      if (other === shop) found.set(`${i} ${hand.technician}`, own);
      return own;
    });
  const at = scenarios.map((scenario, i) => figures(shop, null, scenario, i));
  const moved = perturbed(shop).map(({ shop: other, hand }) =>
    scenarios.map((scenario, i) => figures(other, hand, scenario, i)),
  );
  const [now] = at;
  const rows = scenarios.map(({ name }, i) => {
    const figures = at[i];
    if (!figures || !now) throw new RangeError('A scenario has no figures.');
    const figureOf = (value: (row: readonly Record<Measure, number>[]) => number, floor: number): Figure => {
      const here = value(at);
      const se = Math.sqrt(moved.reduce((sum, row) => sum + (value(row) - here) ** 2, 0));
      return { value: here, low: Math.max(floor, here - Z * se), high: here + Z * se };
    };
    const each = (
      value: (measure: Measure) => (row: readonly Record<Measure, number>[]) => number,
      floor: number,
    ) =>
      Object.fromEntries(MEASURES.map((measure) => [measure, figureOf(value(measure), floor)])) as Record<
        Measure,
        Figure
      >;
    return {
      name,
      figures: each((measure) => (row) => row[i]?.[measure] ?? NaN, 0),
      change:
        i === 0
          ? null
          : each((measure) => (row) => (row[i]?.[measure] ?? NaN) - (row[0]?.[measure] ?? NaN), -Infinity),
    };
  });
  return { rows, method: METHOD, why: null };
}

function shopFigures(
  shop: WorkingShop,
  figuresOf: (hand: WorkingHand, others: readonly WorkingHand[]) => Record<Measure, number>,
): Record<Measure, number> {
  const hands = shop.hands.filter(({ share }) => share > 0);
  const total = hands.reduce((sum, { share }) => sum + share, 0);
  const figures = hands.map((hand) => ({
    share: hand.share / total,
    of: figuresOf(
      hand,
      hands.filter((other) => other !== hand),
    ),
  }));
  return Object.fromEntries(
    MEASURES.map((measure) => [
      measure,
      figures.reduce((sum, { share, of }) => sum + share * of[measure], 0),
    ]),
  ) as Record<Measure, number>;
}

/** The shop with each parameter in turn moved by one standard error; `hand` is the place of the one hand it concerns. */
function perturbed(shop: WorkingShop): { shop: WorkingShop; hand: number | null }[] {
  const { body } = shop;
  const hands = shop.hands.flatMap((hand, i) => {
    if (!(hand.share > 0)) return [];
    const other = (changed: Partial<WorkingHand>) => ({
      hand: i,
      shop: { ...shop, hands: shop.hands.map((one, k) => (k === i ? { ...one, ...changed } : one)) },
    });
    return [
      other({ setting: hand.setting * Math.exp(hand.settingLogSe) }),
      other({ missetRate: Math.min(0.9, hand.missetRate + hand.missetRateSe) }),
    ];
  });
  return [
    ...hands,
    { hand: null, shop: { ...shop, body: scattered(body) } },
    {
      hand: null,
      shop: { ...shop, body: { ...body, offShare: Math.min(0.9, body.offShare + body.offShareSe) } },
    },
  ];
}

function scattered(body: WorkingShop['body']): WorkingShop['body'] {
  const factor = Math.exp(body.scatterLogSe);
  return { ...body, scatter: body.scatter * factor, flatScatter: body.flatScatter * factor };
}
