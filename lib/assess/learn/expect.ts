import type { Component } from '../cause/components';
import { componentAt, type Explanation, patternAt } from '../cause/explanation';
import { frameRound } from '../cause/frame';
import { type Learned, PATTERNS } from '../cause/learned';
import { damages, handOf, modelRound, type RoundModel } from '../cause/model';
import { pairSetting, type SettingMoments, zeroSetting } from '../cause/moments';
import { isProved, weighOutcomes } from '../cause/outcomes';
import { search, type SearchEffort } from '../cause/search';
import { lengthEvidence } from '../cause/lengths';
import type { Round } from '@/lib/measure/types';
import { addExpectedInformation } from './expected-information';
import { soundBodies, tellsScatter } from './parts';
import { roundSlots } from './round-scores';
import { addScores } from './scores';
import type { Tally } from './tally';

const NEGLIGIBLE = 1e-3;

/** Explanations beyond these, likeliest first, would hardly change what is expected of the information. */
const MOST = 0.9;

/** Passes look at a round again and again. */
const frames = new WeakMap<Round, ReturnType<typeof frameRound>>();

function framed(round: Round): ReturnType<typeof frameRound> {
  let frame = frames.get(round);
  if (frame === undefined) frames.set(round, (frame = frameRound(round)));
  return frame;
}

/** One expectation step: what the explanations of a round say about the parameters, added to the tally. */
export function expectRound(round: Round, learned: Learned, effort: SearchEffort, tally: Tally): void {
  const frame = framed(round);
  if ('why' in frame) return;
  const model = modelRound(frame, learned);
  // What a re-check proved may weigh a light one up again: then all are needed.
  const least = isProved(model) ? 0 : NEGLIGIBLE;
  const found = weighOutcomes(model, search(model, { ...effort, least }));
  const leading = found.explanations.filter(({ weight }) => weight > NEGLIGIBLE);
  const total = leading.reduce((sum, { weight }) => sum + weight, 0);
  if (!(total > 0)) return;
  tally.rounds++;
  tally.logEvidence += found.logEvidence;
  const slots = roundSlots(model, tally);
  const { scatters, biases } = slots;
  for (const zero of model.zeros) count(tally, zero.pair.technician);
  for (const pair of model.steps) {
    count(tally, pair.pair.technician);
    if (!pair.first) tally.settled++;
    tally.settled += pair.pair.cause.filter((cause) => cause !== null).length;
  }
  for (const { weight, explanation } of leading) {
    const w = weight / total;
    model.zeros.forEach((zero, k) => {
      const setting = componentAt(zero.settings, explanation.zeroSettings[k] ?? 0);
      const { technician, gauge } = zero.pair;
      const moments = zeroSetting(explanation, zero);
      scatters.add(
        slots.zeros[k] ?? 0,
        tallySetting(tally, learned, w, technician, gauge, setting, moments, zero.hand.setting),
      );
    });
    model.steps.forEach((pair, step) => {
      const setting = componentAt(pair.settings, explanation.settings[step] ?? 0);
      const { technician, gauge } = pair.pair;
      const moments = pairSetting(explanation, pair, setting);
      const at = slots.steps[step];
      if (at === undefined) return;
      scatters.add(
        at.scatter,
        tallySetting(tally, learned, w, technician, gauge, setting, moments, pair.hand.setting),
      );
      const pull = pullOf(moments, setting);
      biases.add(at.hand, pull);
      biases.add(at.gauge, pull);
    });
    scatters.add(slots.body, tallyBodies(tally, model, explanation, w));
    scatters.weigh(w);
    biases.weigh(w);
    tallyLengths(tally, model, learned, explanation, w);
  }
  const looked = likeliest(leading, MOST * total);
  const share = looked.reduce((sum, { weight }) => sum + weight, 0);
  for (const { weight, explanation } of looked)
    addExpectedInformation(model, explanation, weight / share, slots);
  addScores(tally.scatters, scatters);
  addScores(tally.biases, biases);
}

/** Those that weigh `enough` together. @param leading the likeliest first. */
function likeliest<Weighed extends { weight: number }>(
  leading: readonly Weighed[],
  enough: number,
): Weighed[] {
  let before = 0;
  return leading.filter(({ weight }) => {
    const isNeeded = before < enough;
    before += weight;
    return isNeeded;
  });
}

function count(tally: Tally, technician: string): void {
  const entry = tally.setups.get(technician);
  if (entry) entry.count++;
}

/** d ln p / d bias for one setup: how far the expected setting is from its prior mean, weighed by its precision. */
function pullOf(moments: SettingMoments, setting: Component): number {
  const { varLeft: vL, varRight: vR, covariance: c } = setting;
  const det = vL * vR - c * c;
  const dL = moments.left - setting.left;
  const dR = moments.right - setting.right;
  return ((vR - c) * dL + (vL - c) * dR) / det;
}

/** Counts what a setting is taken to be, and returns d ln p / d ln(setting sd). */
function tallySetting(
  tally: Tally,
  learned: Learned,
  w: number,
  technician: string,
  gauge: string,
  setting: Component,
  moments: SettingMoments,
  sd: number,
): number {
  const dL = moments.left - setting.left;
  const dR = moments.right - setting.right;
  if (setting.misset !== 'ordinary') {
    const entry = tally.setups.get(technician);
    if (entry) entry.misset += w;
    tally.missets[setting.misset] += w;
    if (setting.band >= 0) tally.missetSizes[setting.band] = (tally.missetSizes[setting.band] ?? 0) + w;
    if (setting.misset === 'other-mark') {
      const mark = tally.marks.get(gauge);
      if (mark) {
        const precision = w / (sd ** 2 + (moments.varLeft + moments.varRight) / 2);
        mark.precision += precision;
        mark.weighted += (precision * Math.abs(moments.left + moments.right)) / 2;
      }
    }
  }
  if (!tellsScatter(setting)) return 0;
  const squares = dL * dL + moments.varLeft + dR * dR + moments.varRight;
  const cross = dL * dR + moments.covariance;
  const rho = learned.common;
  const quadratic = (squares - 2 * rho * cross) / (1 - rho * rho) / sd ** 2;
  tally.common.cross += (w * cross) / sd ** 2;
  tally.common.squares += (w * squares) / 2 / sd ** 2;
  return quadratic - 2;
}

/** Counts damage, and returns d ln p / d ln(scatter) of the undamaged bodies. */
function tallyBodies(tally: Tally, model: RoundModel, item: Explanation, w: number): number {
  const { phase, stations } = model.frame;
  const impacts = tally.impacts[phase];
  const patterns: number[] = [];
  for (let g = 0; g < stations.length; g++) patterns.push(patternAt(model, item, g));
  impacts.forEach((impact, c) => {
    const share = w * (item.impacts[c] ?? 0);
    impact.share += share;
    stations.forEach((station, g) => {
      const pattern = PATTERNS[patterns[g] ?? 0] ?? 'none';
      impact.patterns[station.zero ? 'center' : station.section][pattern] += share;
    });
  });
  for (const pair of model.steps) {
    if (!pair.first) continue;
    const { band } = componentAt(model.bodies, item.bodies[pair.station] ?? 0);
    if (band >= 0) tally.damageSizes[band] = (tally.damageSizes[band] ?? 0) + w;
  }
  const n = model.size;
  let score = 0;
  for (const { place, at } of soundBodies(model, item))
    for (const i of [at, at + 1])
      score += ((item.mean[i] ?? 0) ** 2 + (item.covariance[i * n + i] ?? 0)) / place.varLeft - 1;
  return score;
}

function tallyLengths(tally: Tally, model: RoundModel, learned: Learned, item: Explanation, w: number): void {
  for (const { evidence, ends } of model.lengths) {
    const hand = handOf(learned, evidence.technician);
    const { outGivenDamage, outGivenSound } = lengthEvidence(evidence, hand, learned);
    const damaged = ends.some(([station, side]) => damages(patternAt(model, item, station), side));
    const out = damaged ? outGivenDamage : outGivenSound;
    if (damaged) {
      tally.lengths.damaged += w;
      tally.lengths.damagedOut += w * out;
    } else {
      tally.lengths.sound += w;
      tally.lengths.soundOut += w * out;
    }
    tally.lengths.squares += w * (1 - out) * (evidence.y ** 2 - hand.reading ** 2 / evidence.n);
    tally.lengths.settings += (w * (1 - out) * hand.setting ** 2) / evidence.setups;
  }
}
