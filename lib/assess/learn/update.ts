import { type Learned, PHASES, startingPoint } from '../cause/learned';
import { bodyKey } from './scores';
import { scoringStep } from './scoring-step';
import type { Tally } from './tally';

/** What the weak priors are worth, in setups, rounds or lengths. */
const WORTH = {
  missetRate: 25,
  shopRate: 300,
  missets: 60,
  sizes: 40,
  impacts: 5,
  shares: 12,
  lengths: 10,
  common: 20,
};

/** Prior sds of ln(setting sd) of one technician around the shop's, and of ln(body scatter) around its start:
 * a repair's scatter is hard to tell from the hands', so its start (common practice) holds until many re-hangs speak. */
const SETTING_SPREAD = 0.45;
const BODY_SPREAD = { before: 0.7, after: 0.2 };

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/**
 * How many times firmer the priors of damage and of mis-sets hold in a shop that never hangs a gauge again: there
 * 'both sides off alike' is gauge or body as one pleases, and only the start says which.
 */
const FIRMER = 30;
const SETTLED_ENOUGH = 12;

const firmness = (settled: number): number => 1 + FIRMER * Math.exp(-settled / SETTLED_ENOUGH);

/** One maximisation step: the parameters that the tally makes likeliest, drawn towards weak priors. */
export function update(learned: Learned, tally: Tally): Learned {
  const prior = startingPoint();
  const next: Learned = structuredClone(learned);
  const firm = firmness(tally.settled);
  next.rounds = tally.rounds;
  updateScatters(next, tally);
  updateBiases(next, tally);
  updateRates(next, tally, firm);
  next.missets = shares(tally.missets, prior.missets, WORTH.missets);
  next.missetSizes = list(tally.missetSizes, prior.missetSizes, WORTH.sizes);
  next.damageSizes = list(tally.damageSizes, prior.damageSizes, WORTH.sizes);
  next.common = clamp(
    (tally.common.cross + WORTH.common * prior.common) / (tally.common.squares + WORTH.common),
    0.05,
    0.9,
  );
  for (const phase of PHASES) {
    const body = next.bodies[phase];
    const start = prior.bodies[phase];
    let total = 0;
    body.impacts.forEach((impact, c) => {
      const from = start.impacts[c];
      const seen = tally.impacts[phase][c];
      if (!from || !seen) return;
      impact.share = seen.share + firm * WORTH.shares * from.share;
      total += impact.share;
      for (const section of ['front', 'center', 'rear'] as const) {
        impact.patterns[section] = shares(
          seen.patterns[section],
          from.patterns[section],
          firm * WORTH.impacts,
        );
      }
    });
    for (const impact of body.impacts) impact.share /= total;
  }
  const { lengths } = tally;
  next.lengths = {
    scatter: Math.sqrt(
      clamp(
        (lengths.squares + WORTH.lengths * prior.lengths.scatter ** 2) / (lengths.settings + WORTH.lengths),
        0.05,
        9,
      ),
    ),
    outWhenDamaged:
      (lengths.damagedOut + WORTH.lengths * prior.lengths.outWhenDamaged) / (lengths.damaged + WORTH.lengths),
    outOtherwise:
      (lengths.soundOut + WORTH.lengths * prior.lengths.outOtherwise) / (lengths.sound + WORTH.lengths),
  };
  for (const [gauge, mark] of tally.marks) {
    const state = next.gauges[gauge];
    if (!state) continue;
    const precision = 1 / prior.newGauge.markSd ** 2 + mark.precision;
    state.mark = (prior.newGauge.mark / prior.newGauge.markSd ** 2 + mark.weighted) / precision;
    state.markSd = Math.sqrt(1 / precision);
  }
  return next;
}

/** A step on ln(scatter), taken in the variance, where scoring leads to the fit of one normal sample at once. */
const inVariance = (step: number): number => clamp(0.5 * Math.log(Math.max(0.25, 1 + 2 * step)), -0.6, 0.6);

/**
 * Setting sds of all technicians and scatter of sound bodies, together, since a reading shows only their sum:
 * one bounded scoring step, with the spread of hands in the shop as prior.
 */
function updateScatters(next: Learned, tally: Tally): void {
  const { keys } = tally.scatters;
  const n = keys.length;
  const logs = keys.map((key) => Math.log(scatterOf(next, key)));
  const known = keys.map((key) =>
    key.startsWith('t ') ? Math.min(60, (tally.setups.get(key.slice(2))?.count ?? 0) + 1) : 0,
  );
  const centre =
    logs.reduce((sum, log, i) => sum + log * (known[i] ?? 0), 0) / known.reduce((sum, w) => sum + w, 0);
  const start = startingPoint();
  const { step, covariance } = scoringStep(
    tally.scatters,
    keys.map((key, i) => {
      const log = logs[i] ?? 0;
      if (key.startsWith('t ')) return { precision: 1 / SETTING_SPREAD ** 2, from: log - centre };
      const spread = BODY_SPREAD[bodyOf(key)];
      return { precision: 1 / spread ** 2, from: log - Math.log(scatterOf(start, key)) };
    }),
  );
  keys.forEach((key, i) => {
    const log = (logs[i] ?? 0) + inVariance(step[i] ?? 0);
    if (key.startsWith('b ')) {
      // The floor is the rounding of a reading.
      const scatter = clamp(Math.exp(log), 0.03, 4);
      for (const phase of PHASES) if (bodyKey(phase) === key) next.bodies[phase].scatter = scatter;
      return;
    }
    const hand = next.technicians[key.slice(2)];
    if (!hand) return;
    hand.setting = clamp(Math.exp(log), 0.05, 12);
    hand.settingLogSe = Math.sqrt(covariance[i * n + i] ?? 0);
    hand.setups = tally.setups.get(key.slice(2))?.count ?? 0;
  });
  const hands = logs.filter((_, i) => keys[i]?.startsWith('t '));
  const spread = Math.sqrt(
    hands.reduce((sum, log) => sum + (log - centre) ** 2, SETTING_SPREAD ** 2) / (hands.length + 1),
  );
  next.newTechnician = {
    ...next.newTechnician,
    setting: Math.exp(centre + spread ** 2 / 2),
    settingLogSe: spread,
  };
}

/** Whose scatter of sound bodies is called so; a repair that is measured again has that of its first measuring. */
const bodyOf = (key: string): 'before' | 'after' => (key === bodyKey('before') ? 'before' : 'after');

const scatterOf = (learned: Learned, key: string): number =>
  key.startsWith('b ')
    ? learned.bodies[bodyOf(key)].scatter
    : (learned.technicians[key.slice(2)]?.setting ?? learned.newTechnician.setting);

/** Biases of technicians and gauges together: one scoring step of the crossed model with normal priors. */
function updateBiases(next: Learned, tally: Tally): void {
  const { keys } = tally.biases;
  const n = keys.length;
  if (n === 0) return;
  const sdTechnician = next.newTechnician.biasSe;
  const sdGauge = next.newGauge.biasSe;
  const current = keys.map((key) => biasOf(next, key));
  const { step, covariance } = scoringStep(
    tally.biases,
    keys.map((key, i) => ({
      precision: 1 / (key.startsWith('t ') ? sdTechnician : sdGauge) ** 2,
      from: current[i] ?? 0,
    })),
  );
  const own = keys.flatMap((key, i) => (key.startsWith('t ') ? [i] : []));
  keys.forEach((key, i) => {
    const value = (current[i] ?? 0) + clamp(step[i] ?? 0, -1, 1);
    const se = Math.sqrt(covariance[i * n + i] ?? 0);
    const name = key.slice(2);
    const target = key.startsWith('t ') ? next.technicians[name] : next.gauges[name];
    if (!target) return;
    target.bias = value;
    target.biasSe = se;
    if ('biasContrastSe' in target) target.biasContrastSe = contrastSe(covariance, n, own, i);
  });
  const spread = (targets: { bias: number; biasSe: number }[], start: number): number =>
    Math.sqrt(
      targets.reduce((sum, t) => sum + t.bias ** 2 + t.biasSe ** 2, 2 * start ** 2) / (targets.length + 2),
    );
  next.newTechnician.biasSe = clamp(
    spread(Object.values(next.technicians), startingPoint().newTechnician.biasSe),
    0.05,
    3,
  );
  next.newGauge.biasSe = clamp(spread(Object.values(next.gauges), startingPoint().newGauge.biasSe), 0.05, 3);
}

/** Standard error of one bias less the mean of all in `own`. */
function contrastSe(covariance: Float64Array, n: number, own: readonly number[], i: number): number {
  let variance = 0;
  for (const j of own) {
    for (const k of own) {
      const weight = ((j === i ? 1 : 0) - 1 / own.length) * ((k === i ? 1 : 0) - 1 / own.length);
      variance += weight * (covariance[j * n + k] ?? 0);
    }
  }
  return Math.sqrt(Math.max(0, variance));
}

const biasOf = (learned: Learned, key: string): number =>
  (key.startsWith('t ') ? learned.technicians[key.slice(2)]?.bias : learned.gauges[key.slice(2)]?.bias) ?? 0;

function updateRates(next: Learned, tally: Tally, firm: number): void {
  let missets = 0;
  let setups = 0;
  for (const { count, misset } of tally.setups.values()) {
    missets += misset;
    setups += count;
  }
  const shop =
    (missets + firm * WORTH.shopRate * startingPoint().newTechnician.missetRate) /
    (setups + firm * WORTH.shopRate);
  next.newTechnician.missetRate = shop;
  for (const [name, { count, misset }] of tally.setups) {
    const hand = next.technicians[name];
    if (hand)
      hand.missetRate = clamp(
        (misset + firm * WORTH.missetRate * shop) / (count + firm * WORTH.missetRate),
        1e-4,
        0.5,
      );
  }
}

function shares<K extends string>(
  seen: Record<K, number>,
  start: Record<K, number>,
  worth: number,
): Record<K, number> {
  const keys = Object.keys(start) as K[];
  const total = keys.reduce((sum, key) => sum + seen[key], 0) + worth;
  return Object.fromEntries(keys.map((key) => [key, (seen[key] + worth * start[key]) / total])) as Record<
    K,
    number
  >;
}

function list(seen: number[], start: number[], worth: number): number[] {
  const total = seen.reduce((sum, value) => sum + value, 0) + worth;
  return start.map((value, i) => ((seen[i] ?? 0) + worth * value) / total);
}
