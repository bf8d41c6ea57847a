import { componentAt, patternAt } from '../cause/explanation';
import { type JudgedRound, zeroMisset } from '../cause/judge';
import type { Learned, TechnicianHand } from '../cause/learned';
import type { PairModel } from '../cause/model';
import type { NextCheck } from '../types';
import { entropyBits, expectedBits } from './information';
import { type Leading, lengthBits, predictions } from './predict';
import { exchangeWords, lengthWords, otherTechnicianWords, rehangWords, zeroWords } from './words';

/** Minutes that a check takes, as a rule (a judgement of ours; common practice varies). */
const MINUTES = { rehang: 4, length: 2, exchange: 9, otherTechnician: 6 } as const;

/** Explanations beyond these change no ranking. */
const LEADING = 10;

/** A length of the sheet that was not read in this round. */
export interface UnreadLength {
  point: string;
}

/** With less than this open, in bits, no check is worth a walk to the vehicle. */
const WORTH_ASKING = 0.02;

function groupBits(leading: readonly Leading[]): number {
  const weights = new Map<string, number>();
  for (const { group, weight } of leading) weights.set(group, (weights.get(group) ?? 0) + weight);
  return entropyBits(weights.values());
}

/**
 * What to check next: hang a gauge again, hang a zero gauge again (and all others against it), read a length
 * that was not read, exchange two gauges, let another technician hang it. Each with the bits it is expected to
 * tell about what is gauge and what is body, best value for its minutes first, but a zero gauge that is likely mis-set
 * before all others; checks that tell nothing are left out.
 */
export function nextChecks(
  judged: JudgedRound,
  learned: Learned,
  unread: readonly UnreadLength[] = [],
): NextCheck[] {
  const leading = leadingOf(judged);
  const groups = leading.map(({ group }) => group);
  if (groupBits(leading) < WORTH_ASKING && judged.pZeroMisset < 0.5) return [];
  const last = lastSetups(judged);
  const checks: NextCheck[] = [];
  const predict = (
    pairs: readonly PairModel[],
    hand: (pair: PairModel) => TechnicianHand,
    zero: number | null = null,
  ): number => expectedBits(predictions(judged, leading, pairs, hand, learned, zero), groups);
  for (const pair of last) {
    const height = judged.heights.find(
      (h) => h.setup === pair.pair.label && h.station === stationOf(judged, pair),
    );
    checks.push({
      ...none(
        'rehang',
        MINUTES.rehang,
        predict([pair], (p) => p.hand),
        rehangWords(pair.pair, height, judged.pZeroMisset),
      ),
      setup: pair.pair.label,
    });
    const other = bestOther(learned, pair.pair.technician);
    if (other) {
      checks.push({
        ...none(
          'other-technician',
          MINUTES.otherTechnician,
          predict([pair], () => other.hand),
          otherTechnicianWords(pair.pair, other.name),
        ),
        setup: pair.pair.label,
      });
    }
  }
  const first = mostDoubtful(judged, last);
  if (first) {
    for (const second of last) {
      if (first.pair.gauge === second.pair.gauge) continue;
      checks.push({
        ...none(
          'exchange',
          MINUTES.exchange,
          predict([first, second], (p) => p.hand),
          exchangeWords(first.pair, second.pair),
        ),
        setup: first.pair.label,
        other: second.pair.label,
      });
    }
  }
  /** Setups of zero gauges that are likelier mis-set than not: they spoil every other height. */
  const spoiling = new Set<string>();
  for (const zero of lastZeros(judged)) {
    const bits = predict(last, (p) => p.hand, zero);
    const hung = judged.model.zeros[zero];
    if (!hung) continue;
    const { pair } = hung;
    if (zeroMisset(judged, [hung]) >= 0.5) spoiling.add(pair.label);
    checks.push({
      ...none('rehang', MINUTES.rehang * (1 + last.length), bits, zeroWords(pair)),
      setup: pair.label,
    });
  }
  for (const { point } of unread) {
    const bits = lengthBits(judged, leading, point, learned);
    if (bits > 0) checks.push({ ...none('read-length', MINUTES.length, bits, lengthWords(point)), point });
  }
  return checks
    .filter((check) => check.gainBits >= 0.01 || spoiling.has(check.setup ?? ''))
    .sort(
      (a, b) =>
        Number(spoiling.has(b.setup ?? '')) - Number(spoiling.has(a.setup ?? '')) ||
        b.gainBits / b.minutes - a.gainBits / a.minutes,
    );
}

const none = (action: NextCheck['action'], minutes: number, gainBits: number, words: string): NextCheck => ({
  action,
  setup: null,
  other: null,
  point: null,
  gainBits,
  minutes,
  words,
});

const stationOf = (judged: JudgedRound, pair: PairModel): number =>
  judged.frame.stations[pair.station]?.x ?? Number.NaN;

/** The explanations that carry nearly all weight, each with its pattern of damage and of mis-set gauges. */
function leadingOf(judged: JudgedRound): Leading[] {
  const { model, found } = judged;
  const top = found.explanations.slice(0, LEADING);
  const total = top.reduce((sum, { weight }) => sum + weight, 0);
  return top.map(({ weight, explanation }) => {
    const bodies = judged.frame.stations.map((_, g) => patternAt(model, explanation, g)).join('');
    const zeros = model.zeros
      .map((zero, k) => wrong(componentAt(zero.settings, explanation.zeroSettings[k] ?? 0).misset))
      .join('');
    const settings = model.steps
      .map((pair, i) => wrong(componentAt(pair.settings, explanation.settings[i] ?? 0).misset))
      .join('');
    return { weight: weight / total, explanation, group: `${bodies} ${zeros} ${settings}` };
  });
}

/** Which hangers a setting has wrong, whatever the slip is called. */
const wrong = (misset: string): string =>
  misset === 'ordinary' ? '-' : misset === 'left' ? 'l' : misset === 'right' ? 'r' : 'b';

/** The last setup at each station away from the zero stations. */
function lastSetups(judged: JudgedRound): PairModel[] {
  const last = new Map<number, PairModel>();
  for (const pair of judged.model.steps) last.set(pair.station, pair);
  return [...last.values()];
}

/** The setup whose worse height is least clear: the one that is worth exchanging with another. */
function mostDoubtful(judged: JudgedRound, last: readonly PairModel[]): PairModel | undefined {
  const doubt = (pair: PairModel): number =>
    Math.max(
      0,
      ...judged.heights
        .filter((height) => height.setup === pair.pair.label && height.station === stationOf(judged, pair))
        .map(({ p }) => entropyBits(Object.values(p))),
    );
  return [...last].sort((a, b) => doubt(b) - doubt(a))[0];
}

function lastZeros(judged: JudgedRound): number[] {
  const last = new Map<number, number>();
  judged.model.zeros.forEach((zero, k) => last.set(zero.station, k));
  return [...last.values()];
}

function bestOther(learned: Learned, technician: string): { name: string; hand: TechnicianHand } | null {
  let best: { name: string; hand: TechnicianHand } | null = null;
  for (const [name, hand] of Object.entries(learned.technicians)) {
    if (name !== technician && hand.setups >= 10 && (best === null || hand.setting < best.hand.setting))
      best = { name, hand };
  }
  return best;
}
