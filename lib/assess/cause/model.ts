import type { Section } from '@/lib/measure';
import type { SettingColumns } from './columns';
import { bodyComponents, type Component } from './components';
import type { HeightPair, LengthEvidence, RoundFrame } from './frame';
import { type BodyState, type GaugeState, type Learned, PATTERNS, type TechnicianHand } from './learned';
import { lengthEvidence } from './lengths';
import { KNOWN_PLACE, type Meeting, type Places, placesOf } from './places';
import type { Gain } from './setting-gain';
import { type PairSettings, Settings, type SettingShape } from './settings';
import { knownSlips, type Slip } from './slips';

/** One pair of heights away from the zero stations, ready for the search. */
export interface PairModel {
  station: number;
  pair: HeightPair;
  hand: TechnicianHand;
  gauge: GaugeState;
  settings: Component[];
  wrong: PairSettings['wrong'];
  /** What this setup can be, and the bodies it can meet. */
  columns: SettingColumns;
  places: Places;
  meetings: Meeting[];
  first: boolean;
  hasLeft: boolean;
  hasRight: boolean;
  /** Readings less the known biases; what remains unknown of the biases is noise common to both sides. */
  y: [number, number];
  noise: [number, number];
  commonNoise: number;
  /** State indices of the two zero errors (left; right is one more) and of this station's body. */
  zeros: [number, number];
  body: number;
  weights: [number, number];
  /** Part of the setting variance that both hangers share. */
  common: number;
  /** What `settingGain` has found of the settings so far. */
  gains: Map<Component, Gain>;
}

export interface ZeroModel {
  station: 0 | 1;
  pair: HeightPair;
  hand: TechnicianHand;
  gauge: GaugeState;
  /** Fine bands first, then the broad ones for meetings of two rare events. */
  settings: Component[];
  logPriors: Float64Array;
  shape: SettingShape;
  /** State index of this setup's datum error, left. */
  error: number;
}

export interface LengthModel {
  evidence: LengthEvidence;
  ends: [number, 0 | 1][];
  /** The last of its stations in frame order: there its likelihood enters. */
  last: number;
  damaged: number;
  sound: number;
}

/**
 * A round turned into numbers. The state is, in order: body at zero station a (left, right), at b, then the
 * datum error of every zero setup, then the body at every other station.
 */
export interface RoundModel {
  frame: RoundFrame;
  size: number;
  zeros: ZeroModel[];
  /** Setups away from the zero stations, station by station: the steps of the search. */
  steps: PairModel[];
  bodies: Component[];
  bodyPriors: Float64Array;
  /** P(pattern | impact class) by class, then station, then pattern. */
  patterns: number[][][];
  shares: number[];
  /** Whether any impact leaves a zero station like this, by pattern. */
  possible: readonly boolean[];
  lengths: LengthModel[];
}

export const handOf = (learned: Learned, technician: string): TechnicianHand =>
  learned.technicians[technician] ?? learned.newTechnician;
export const gaugeOf = (learned: Learned, gauge: string): GaugeState =>
  learned.gauges[gauge] ?? learned.newGauge;

export function modelRound(frame: RoundFrame, learned: Learned): RoundModel {
  const body = learned.bodies[frame.phase];
  const { bodies, places, logPriors: bodyPriors } = bodiesOf(body.scatter, learned);
  const { shares, patterns, possible } = impactsOf(body);
  const settings = settingsBy(learned);
  const slips = knownSlips(frame);
  // Lists that are asked for many times a round are pushed to: one that `map` makes changes its kind once it is compiled.
  const zeros: ZeroModel[] = [];
  for (const { station, pair } of frame.zeroSetups) {
    const hand = handOf(learned, pair.technician);
    const gauge = gaugeOf(learned, pair.gauge);
    const { settings: all, logPriors, shape } = settings.zero(hand, gauge, slips(pair));
    const error = 4 + 2 * zeros.length;
    zeros.push({ station, pair, hand, gauge, settings: all, logPriors, shape, error });
  }
  const firstBody = 4 + 2 * zeros.length;
  const steps = frame.stations.flatMap((station, g) =>
    station.zero
      ? []
      : station.pairs.map((pair, i) =>
          pairModel(frame, learned, places, settings, slips(pair), pair, g, i === 0, firstBody + 2 * (g - 2)),
        ),
  );
  return {
    frame,
    size: firstBody + 2 * (frame.stations.length - 2),
    zeros,
    steps,
    bodies,
    bodyPriors,
    shares,
    possible,
    patterns: shares.map((_, impact) =>
      frame.stations.map((station) => patterns[station.zero ? 'center' : station.section][impact] ?? []),
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

/** What setups can be, by what was learned: it is the same in all its rounds. */
const laidOut = new WeakMap<Learned, Settings>();

function settingsBy(learned: Learned): Settings {
  let settings = laidOut.get(learned);
  if (!settings) laidOut.set(learned, (settings = new Settings(learned)));
  return settings;
}

/** Shares of the impacts, and what patterns they leave in each section, by what is known of the bodies of a phase. */
interface Impacts {
  shares: number[];
  /** By class, then pattern. */
  patterns: Record<Section, number[][]>;
  /** Whether any leaves a zero station like this, by pattern. */
  possible: readonly boolean[];
}

/** One list for all that are alike: which they are is asked for every round. */
const possibles = new Map<string, readonly boolean[]>();

function possibleOf(list: readonly boolean[]): readonly boolean[] {
  const key = list.join(' ');
  const known = possibles.get(key) ?? list;
  possibles.set(key, known);
  return known;
}

const impactsKnown = new WeakMap<BodyState, Impacts>();

function impactsOf(body: BodyState): Impacts {
  let known = impactsKnown.get(body);
  if (known) return known;
  const of = (section: Section): number[][] =>
    body.impacts.map((impact) => PATTERNS.map((pattern) => impact.patterns[section][pattern]));
  known = {
    shares: body.impacts.map((impact) => impact.share),
    patterns: { front: of('front'), center: of('center'), rear: of('rear') },
    possible: possibleOf(
      PATTERNS.map((pattern) =>
        body.impacts.some((impact) => impact.share * impact.patterns.center[pattern] > 0),
      ),
    ),
  };
  impactsKnown.set(body, known);
  return known;
}

interface Bodies {
  key: string;
  bodies: Component[];
  logPriors: Float64Array;
  places: Places;
}

/** Of the last few scatters: whole shops are judged by one that was learned, phase by phase. */
const lately: Bodies[] = [];
const FEW = 4;

function bodiesOf(scatter: number, learned: Learned): Bodies {
  const key = `${scatter} ${learned.damageSizes.join(' ')}`;
  const known = lately.find((one) => one.key === key);
  if (known) return known;
  const bodies = bodyComponents(scatter, learned);
  const logPriors = Float64Array.from(bodies, ({ logPrior }) => logPrior);
  const made = { key, bodies, logPriors, places: placesOf(bodies) };
  lately.unshift(made);
  if (lately.length > FEW) lately.pop();
  return made;
}

function pairModel(
  frame: RoundFrame,
  learned: Learned,
  everywhere: Places,
  laid: Settings,
  slips: readonly Slip[],
  pair: HeightPair,
  station: number,
  first: boolean,
  body: number,
): PairModel {
  const only = frame.stations[station]?.pairs.length === 1;
  const hand = handOf(learned, pair.technician);
  const gauge = gaugeOf(learned, pair.gauge);
  const bias = hand.bias + gauge.bias;
  const noise: [number, number] = [
    hand.reading ** 2 / Math.max(1, pair.n[0]),
    hand.reading ** 2 / Math.max(1, pair.n[1]),
  ];
  const { settings, columns, wrong, meetings } = laid.pair(hand, gauge, slips);
  const places = first ? everywhere : KNOWN_PLACE;
  return {
    station,
    pair,
    hand,
    gauge,
    settings,
    wrong,
    columns,
    places,
    meetings: meetings(places, first && only),
    first,
    hasLeft: pair.n[0] > 0,
    hasRight: pair.n[1] > 0,
    y: [pair.y[0] - bias, pair.y[1] - bias],
    noise,
    commonNoise: hand.biasSe ** 2 + gauge.biasSe ** 2,
    zeros: [4 + 2 * pair.against[0], 4 + 2 * pair.against[1]],
    body,
    weights: frame.stations[station]?.weights ?? [0, 0],
    common: learned.common,
    gains: new Map(),
  };
}

/** Whether a pattern (index into PATTERNS) damages a side. */
export const damages = (pattern: number, side: 0 | 1): boolean => ((sidesOf(pattern) >> side) & 1) === 1;

/** The sides that a pattern (index into PATTERNS) damages as two bits, left 1 and right 2. */
export const sidesOf = (pattern: number): number => (pattern === OPPOSED ? 3 : pattern);

const OPPOSED = PATTERNS.indexOf('opposed');
