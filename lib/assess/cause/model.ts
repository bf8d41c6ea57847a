import { type SettingColumns, settingColumns } from './columns';
import type { Gain } from './combination';
import { bodyComponents, type Component, settingComponents, type UnknownSizes } from './components';
import type { HeightPair, LengthEvidence, RoundFrame } from './frame';
import { type GaugeState, type Learned, PATTERNS, type TechnicianHand } from './learned';
import { lengthEvidence } from './lengths';
import { KNOWN_PLACE, type Meeting, meetings, type Places, placesOf } from './places';

/** One pair of heights away from the zero stations, ready for the search. */
export interface PairModel {
  station: number;
  pair: HeightPair;
  hand: TechnicianHand;
  gauge: GaugeState;
  settings: Component[];
  /** How often the left hanger alone is set wrong, the right one alone, and both. */
  wrong: [left: number, right: number, both: number];
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
  /** Where the broad ones begin. */
  broadFrom: number;
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
  /** P(pattern | impact class) by class, then station, then pattern. */
  patterns: number[][][];
  shares: number[];
  lengths: LengthModel[];
}

export const handOf = (learned: Learned, technician: string): TechnicianHand =>
  learned.technicians[technician] ?? learned.newTechnician;
export const gaugeOf = (learned: Learned, gauge: string): GaugeState =>
  learned.gauges[gauge] ?? learned.newGauge;

export function modelRound(frame: RoundFrame, learned: Learned): RoundModel {
  const body = learned.bodies[frame.phase];
  const { bodies, places } = bodiesOf(body.scatter, learned);
  const { fineSizes, broadSizes } = sizesBy(learned);
  const zeros = frame.zeroSetups.map(({ station, pair }, k): ZeroModel => {
    const hand = handOf(learned, pair.technician);
    const gauge = gaugeOf(learned, pair.gauge);
    const fine = settingComponents(pair, frame, hand, gauge, learned, false, fineSizes);
    const broad = settingComponents(pair, frame, hand, gauge, learned, true, broadSizes).slice(1);
    return {
      station,
      pair,
      hand,
      gauge,
      settings: [...fine, ...broad],
      broadFrom: fine.length,
      error: 4 + 2 * k,
    };
  });
  const firstBody = 4 + 2 * zeros.length;
  const steps = frame.stations.flatMap((station, g) =>
    station.zero
      ? []
      : station.pairs.map((pair, i) =>
          pairModel(frame, learned, places, fineSizes, pair, g, i === 0, firstBody + 2 * (g - 2)),
        ),
  );
  return {
    frame,
    size: firstBody + 2 * (frame.stations.length - 2),
    zeros,
    steps,
    bodies,
    shares: body.impacts.map((impact) => impact.share),
    patterns: body.impacts.map((impact) =>
      frame.stations.map((station) =>
        PATTERNS.map((pattern) => impact.patterns[station.zero ? 'center' : station.section][pattern]),
      ),
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

interface Sizes {
  fineSizes: UnknownSizes;
  broadSizes: UnknownSizes;
}

/** Mis-sets of unknown size by what was learned: they are the same in all its rounds. */
const laidOut = new WeakMap<Learned, Sizes>();

function sizesBy(learned: Learned): Sizes {
  let sizes = laidOut.get(learned);
  if (!sizes) laidOut.set(learned, (sizes = { fineSizes: new Map(), broadSizes: new Map() }));
  return sizes;
}

interface Bodies {
  key: string;
  bodies: Component[];
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
  const made = { key, bodies, places: placesOf(bodies) };
  lately.unshift(made);
  if (lately.length > FEW) lately.pop();
  return made;
}

function pairModel(
  frame: RoundFrame,
  learned: Learned,
  everywhere: Places,
  sizes: UnknownSizes,
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
  const settings = settingComponents(pair, frame, hand, gauge, learned, false, sizes);
  const columns = settingColumns(settings);
  const places = first ? everywhere : KNOWN_PLACE;
  return {
    station,
    pair,
    hand,
    gauge,
    settings,
    wrong: wrongOf(hand, learned, settings),
    columns,
    places,
    meetings: meetings(places, columns, first && only),
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

function wrongOf(hand: TechnicianHand, learned: Learned, settings: readonly Component[]): PairModel['wrong'] {
  const left = hand.missetRate * learned.missets.left;
  const right = hand.missetRate * learned.missets.right;
  // All together is one.
  return [left, right, Math.max(0, 1 - Math.exp(settings[0]?.logPrior ?? 0) - left - right)];
}

/** Whether a pattern (index into PATTERNS) damages a side. */
export const damages = (pattern: number, side: 0 | 1): boolean => ((sidesOf(pattern) >> side) & 1) === 1;

/** The sides that a pattern (index into PATTERNS) damages as two bits, left 1 and right 2. */
export const sidesOf = (pattern: number): number => (pattern === OPPOSED ? 3 : pattern);

const OPPOSED = PATTERNS.indexOf('opposed');
