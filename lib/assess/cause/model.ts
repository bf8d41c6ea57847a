import { bodyComponents, type Component, patternIndex, settingComponents } from './components';
import type { HeightPair, LengthEvidence, RoundFrame } from './frame';
import { type GaugeState, type Learned, PATTERNS, type TechnicianHand } from './learned';
import { lengthEvidence } from './lengths';

const LOG_2PI = Math.log(2 * Math.PI);

/** One pair of heights away from the zero stations, ready for the search. */
export interface PairModel {
  station: number;
  pair: HeightPair;
  hand: TechnicianHand;
  gauge: GaugeState;
  settings: Component[];
  /** Readings less the known biases; what remains unknown of the biases is noise common to both sides. */
  y: [number, number];
  noise: [number, number];
  commonNoise: number;
  /** State indices of the two zero errors (left; right is one more) and of this station's body. */
  zeros: [number, number];
  body: number;
  weights: [number, number];
  /** ln of the highest density these readings can have under any hypothesis. */
  logCeiling: number;
}

export interface ZeroModel {
  station: 0 | 1;
  pair: HeightPair;
  hand: TechnicianHand;
  gauge: GaugeState;
  /** Fine bands first, then (from `broadFrom` on) the broad ones for meetings of two rare events. */
  settings: Component[];
  broadFrom: number;
  /** State index of this setup's datum error, left. */
  error: number;
}

/**
 * A round turned into numbers. The state is, in order: body at zero station a (left, right), at b, then the
 * datum error of every zero setup, then the body at every other station.
 */
export interface RoundModel {
  frame: RoundFrame;
  size: number;
  zeros: ZeroModel[];
  /** By station in frame order; the first two (zero stations) are empty. */
  pairs: PairModel[][];
  bodies: Component[];
  bodyBroadFrom: number;
  /** ln P(pattern | impact class) by class, then station, then pattern. */
  logPatterns: number[][][];
  logShares: number[];
  /** Lengths by the last station of theirs in frame order: their likelihood ratio if an end is damaged. */
  lengths: { evidence: LengthEvidence; ends: [number, 0 | 1][]; last: number; damaged: number; sound: number }[];
}

export const handOf = (learned: Learned, technician: string): TechnicianHand =>
  learned.technicians[technician] ?? learned.newTechnician;
export const gaugeOf = (learned: Learned, gauge: string): GaugeState => learned.gauges[gauge] ?? learned.newGauge;

export function modelRound(frame: RoundFrame, learned: Learned): RoundModel {
  const body = learned.bodies[frame.phase];
  const zeroCount = frame.zeroSetups.length;
  const zeros = frame.zeroSetups.map(({ station, pair }, k): ZeroModel => {
    const hand = handOf(learned, pair.technician);
    const gauge = gaugeOf(learned, pair.gauge);
    const fine = settingComponents(pair, frame, hand, gauge, learned, false);
    const broad = settingComponents(pair, frame, hand, gauge, learned, true).slice(1);
    return { station, pair, hand, gauge, settings: [...fine, ...broad], broadFrom: fine.length, error: 4 + 2 * k };
  });
  const pairs = frame.stations.map((station, g) => {
    if (station.zero) return [];
    return station.pairs.map((pair): PairModel => {
      const hand = handOf(learned, pair.technician);
      const gauge = gaugeOf(learned, pair.gauge);
      const bias = hand.bias + gauge.bias;
      const noise: [number, number] = [hand.reading ** 2 / Math.max(1, pair.n[0]), hand.reading ** 2 / Math.max(1, pair.n[1])];
      const least = hand.setting ** 2 * (1 - learned.common);
      return {
        station: g,
        pair,
        hand,
        gauge,
        settings: settingComponents(pair, frame, hand, gauge, learned, false),
        y: [pair.y[0] - bias, pair.y[1] - bias],
        noise,
        commonNoise: hand.biasSe ** 2 + gauge.biasSe ** 2,
        zeros: [4 + 2 * pair.against[0], 4 + 2 * pair.against[1]],
        body: 4 + 2 * zeroCount + 2 * (g - 2),
        weights: station.weights,
        logCeiling: [0, 1].reduce((sum, s) => sum - ((pair.n[s] ?? 0) > 0 ? 0.5 * (LOG_2PI + Math.log(least + (noise[s] ?? 0))) : 0), 0),
      };
    });
  });
  const bodies = bodyComponents(body.scatter, learned, false);
  const broadBodies = bodyComponents(body.scatter, learned, true).slice(1);
  return {
    frame,
    size: 4 + 2 * zeroCount + 2 * (frame.stations.length - 2),
    zeros,
    pairs,
    bodies: [...bodies, ...broadBodies],
    bodyBroadFrom: bodies.length,
    logShares: body.impacts.map((impact) => Math.log(impact.share)),
    logPatterns: body.impacts.map((impact) =>
      frame.stations.map((station) => PATTERNS.map((pattern) => Math.log(impact.patterns[station.zero ? 'center' : station.section][pattern]))),
    ),
    lengths: frame.lengths
      .filter((length) => length.ends.length > 0)
      .map((length) => ({
        evidence: length,
        ends: length.ends,
        last: Math.max(...length.ends.map(([station]) => station)),
        ...lengthEvidence(length, handOf(learned, length.technician), learned),
      })),
  };
}

/** Whether a pattern (index into PATTERNS) damages a side. */
export const damages = (pattern: number, side: 0 | 1): boolean =>
  pattern === 3 || pattern === (side === 0 ? patternIndex(true, false) : patternIndex(false, true));
