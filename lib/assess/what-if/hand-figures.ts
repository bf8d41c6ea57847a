import { normalLattice } from '@/lib/stats/numeric/normal-lattice';
import { callTable, type CallTable, type ErrorPart } from './call-tables';
import type { Measure, Scenario, WorkingHand, WorkingShop } from './types';

/** Points over the datum errors of a job; mirrored pairs, always the same. */
const POINTS = 128;

/** Expected figures of 100 jobs of one hand under a scenario. `others` hang again where another hand does. */
export function handFigures(
  hand: WorkingHand,
  others: readonly WorkingHand[],
  shop: WorkingShop,
  scenario: Scenario,
): Record<Measure, number> {
  const readings = scenario.readings ?? shop.readings;
  const tables = new Map<string, CallTable>();
  const gauges = gaugeErrors(hand, others, shop, scenario, readings);
  const heights = shop.stations.map(({ lever, tolerance }) => {
    // A true height is counted from the bodies at both zero stations, so it holds their scatter by the lever.
    const spread = Math.sqrt(1 + (1 - lever) ** 2 + lever ** 2);
    const key = `${tolerance} ${spread.toFixed(3)}`;
    const body = { ...shop.body, scatter: shop.body.scatter * spread };
    const table = tables.get(key) ?? callTable(tolerance, body, gauges);
    tables.set(key, table);
    return { lever, table };
  });
  const lengths = lengthTable(hand, others, shop, scenario, readings);
  const atRest = lengths.at(0);
  const n = shop.lengths.count;
  const sum = { falseAlarms: 0, missed: 0, called: 0, both: 0, rehangs: 0 };
  for (const { weight, datum } of datumPoints(hand, shop, scenario)) {
    let [called, both] = [atRest.called ** n, atRest.both ** n];
    for (const { lever, table } of heights) {
      let neitherOut = 1;
      for (const [a, b] of datum) {
        const side = table.at(-((1 - lever) * a + lever * b));
        called *= side.called;
        both *= side.both;
        neitherOut *= 1 - side.firstOut;
        sum.falseAlarms += weight * (table.within - side.both);
        sum.missed += weight * (side.called - side.both);
      }
      sum.rehangs += weight * (1 - neitherOut);
    }
    sum.called += weight * called;
    sum.both += weight * both;
  }
  const trulyRight = heights.reduce((p, { table }) => p * table.within ** 2, lengths.within ** n);
  const redo = 1 - sum.called;
  const hangs = heights.length + 2 + n;
  const { minutes } = shop;
  const again =
    scenario.rehang === 'all' ? hangs : scenario.rehang === 'out' ? sum.rehangs + n * atRest.firstOut : 0;
  return {
    falseAlarms: 100 * (sum.falseAlarms + n * (lengths.within - atRest.both)),
    missed: 100 * (sum.missed + n * (atRest.called - atRest.both)),
    redos: 100 * redo,
    needlessRedos: 100 * (trulyRight - sum.both),
    missedJobs: 100 * (sum.called - sum.both),
    minutes:
      100 *
      (hangs * (minutes.hang + readings * minutes.reading) +
        again * (minutes.rehang + readings * minutes.reading) +
        redo * minutes.redo),
  };
}

/** The errors of a height's first hanging, and of a second where one may follow, by the gauge that is hung. */
function gaugeErrors(
  hand: WorkingHand,
  others: readonly WorkingHand[],
  shop: WorkingShop,
  scenario: Scenario,
  readings: number,
): { chance: number; first: ErrorPart[]; second: ErrorPart[] | null }[] {
  const mean = scenario.rehang === 'all' ? 2 : 1;
  return gaugeNodes(shop, scenario).map(({ chance, bias }) => ({
    chance,
    first: heightErrors([{ hand, share: 1 }], bias, shop, readings, mean),
    second:
      scenario.rehang === 'out' ? heightErrors(again(hand, others, scenario), bias, shop, readings, 1) : null,
  }));
}

function lengthTable(
  hand: WorkingHand,
  others: readonly WorkingHand[],
  shop: WorkingShop,
  scenario: Scenario,
  readings: number,
): CallTable {
  const mean = scenario.rehang === 'all' ? 2 : 1;
  const errors = (hands: readonly { hand: WorkingHand; share: number }[], hangings: number): ErrorPart[] =>
    hands.map(({ hand: { setting, reading }, share }) => ({
      chance: share,
      mean: 0,
      sd: Math.sqrt(((shop.lengthScatter * setting) ** 2 + reading ** 2 / readings) / hangings),
    }));
  const second = scenario.rehang === 'out' ? errors(again(hand, others, scenario), 1) : null;
  const first = errors([{ hand, share: 1 }], mean);
  const body = { ...shop.body, scatter: shop.body.flatScatter };
  return callTable(shop.lengths.tolerance, body, [{ chance: 1, first, second }]);
}

function again(hand: WorkingHand, others: readonly WorkingHand[], { rehangBy }: Scenario) {
  if (rehangBy !== 'another' || others.length === 0) return [{ hand, share: 1 }];
  const total = others.reduce((sum, { share }) => sum + share, 0);
  return others.map((other) => ({ hand: other, share: other.share / total }));
}

/** Error of the mean of `hangings` hangings of one gauge, each of which may be a mis-set. */
function heightErrors(
  hands: readonly { hand: WorkingHand; share: number }[],
  gaugeBias: number,
  shop: WorkingShop,
  readings: number,
  hangings: number,
): ErrorPart[] {
  return hands.flatMap(({ hand, share }) => {
    const { missetRate: q } = hand;
    const variance = (hand.setting ** 2 + hand.reading ** 2 / readings) / hangings;
    const chances = hangings === 1 ? [1 - q, q] : [(1 - q) ** 2, 2 * q * (1 - q), q * q];
    return chances.map((chance, missets) => ({
      chance: share * chance,
      mean: hand.bias + gaugeBias,
      sd: Math.sqrt(variance + (missets * shop.missetSd ** 2) / hangings ** 2),
    }));
  });
}

/** The biases of the gauges in service as three points that have their mean and variance; what is unknown counts as spread. */
function gaugeNodes(shop: WorkingShop, scenario: Scenario): { chance: number; bias: number }[] {
  const used = shop.gauges.filter(({ gauge }) => scenario.gauges?.includes(gauge) ?? true);
  const total = used.reduce((sum, { share }) => sum + share, 0);
  if (!(total > 0)) return [{ chance: 1, bias: 0 }];
  const mean = used.reduce((sum, { share, bias }) => sum + share * bias, 0) / total;
  const variance =
    used.reduce((sum, { share, bias, biasSe }) => sum + share * ((bias - mean) ** 2 + biasSe ** 2), 0) /
    total;
  const step = Math.sqrt(3 * variance);
  return [
    { chance: 1 / 6, bias: mean - step },
    { chance: 2 / 3, bias: mean },
    { chance: 1 / 6, bias: mean + step },
  ];
}

interface DatumPoint {
  weight: number;
  /** Errors of the front and the rear zero gauge, left and right, mm. */
  datum: [number, number][];
}

/** Datum errors of a job: both zero gauges ordinary, or one of them mis-set (both at once is left out). */
function datumPoints(hand: WorkingHand, shop: WorkingShop, scenario: Scenario): DatumPoint[] {
  const hangings = scenario.rehang === 'all' ? 2 : 1;
  const one = 1 - (1 - hand.missetRate) ** hangings;
  const states = [
    { chance: (1 - one) ** 2, wrong: [false, false] },
    { chance: one * (1 - one), wrong: [true, false] },
    { chance: one * (1 - one), wrong: [false, true] },
  ];
  const total = states.reduce((sum, { chance }) => sum + chance, 0);
  const lattice = normalLattice(6, POINTS);
  const [shared, own] = [Math.sqrt(shop.common), Math.sqrt(1 - shop.common)];
  return states.flatMap(({ chance, wrong }) => {
    if (chance === 0) return [];
    const sds = wrong.map((misset) =>
      Math.sqrt(hand.setting ** 2 / hangings + (misset ? (shop.missetSd / hangings) ** 2 : 0)),
    );
    return lattice.map((z): DatumPoint => {
      const error = (zero: 0 | 1, side: 0 | 1) =>
        (sds[zero] ?? 0) * (shared * (z[zero * 3] ?? 0) + own * (z[zero * 3 + 1 + side] ?? 0));
      return {
        weight: chance / total / lattice.length,
        datum: [
          [error(0, 0), error(1, 0)],
          [error(0, 1), error(1, 1)],
        ],
      };
    });
  });
}
