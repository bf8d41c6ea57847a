import { componentAt, type Explanation, patternAt } from '../cause/explanation';
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

/** A check that might be proposed: what it tells and how it is put are worked out when they are asked for. */
interface Proposal extends Pick<NextCheck, 'action' | 'minutes'> {
  setup: string | null;
  other?: string;
  point?: string;
  bits: () => number;
  words: () => string;
  /** It hangs a zero gauge again that is likelier mis-set than not: that spoils every other height. */
  spoiling: boolean;
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
  return proposalsOf(judged, learned, unread)
    .proposals.map((proposal) => ({ proposal, gainBits: proposal.bits() }))
    .filter(({ proposal, gainBits }) => worthwhile(proposal, gainBits))
    .sort(
      (a, b) =>
        Number(b.proposal.spoiling) - Number(a.proposal.spoiling) ||
        b.gainBits / b.proposal.minutes - a.gainBits / a.proposal.minutes,
    )
    .map(({ proposal, gainBits }) => told(proposal, gainBits));
}

/** The first of `nextChecks`, without asking those that cannot be it: no check tells more than there is open. */
export function bestCheck(judged: JudgedRound, learned: Learned): NextCheck | null {
  const { proposals, open } = proposalsOf(judged, learned, []);
  let best: { proposal: Proposal; gainBits: number; order: number } | null = null;
  const byMinutes = proposals
    .map((proposal, order) => ({ proposal, order }))
    .sort((a, b) => a.proposal.minutes - b.proposal.minutes);
  for (const { proposal, order } of byMinutes) {
    const { minutes } = proposal;
    const ahead = best === null ? 0 : Number(proposal.spoiling) - Number(best.proposal.spoiling);
    if (ahead < 0) continue;
    const rate: number = best === null || ahead > 0 ? -Infinity : best.gainBits / best.proposal.minutes;
    if (((1 + ROUNDING) * open) / minutes < rate) continue;
    const gainBits = proposal.bits();
    if (!worthwhile(proposal, gainBits)) continue;
    const sooner = best !== null && ahead === 0 && gainBits / minutes === rate && order < best.order;
    if (gainBits / minutes > rate || sooner) best = { proposal, gainBits, order };
  }
  return best === null ? null : told(best.proposal, best.gainBits);
}

/** What is open is summed in another order than what a check tells of it. */
const ROUNDING = 1e-9;

const worthwhile = ({ spoiling }: Proposal, gainBits: number): boolean => gainBits >= 0.01 || spoiling;

const told = ({ action, minutes, setup, other, point, words }: Proposal, gainBits: number): NextCheck => ({
  action,
  setup,
  other: other ?? null,
  point: point ?? null,
  gainBits,
  minutes,
  words: words(),
});

/** All checks that may be proposed, and how many bits are open; none where too little is. */
function proposalsOf(
  judged: JudgedRound,
  learned: Learned,
  unread: readonly UnreadLength[],
): { proposals: Proposal[]; open: number } {
  const leading = leadingOf(judged);
  const groups = leading.map(({ group }) => group);
  const open = groupBits(leading);
  if (open < WORTH_ASKING && judged.pZeroMisset < 0.5) return { proposals: [], open };
  const last = lastSetups(judged);
  const spoiled = spoiledBy(judged);
  const proposals: Proposal[] = [];
  const predict = (
    pairs: readonly PairModel[],
    hand: (pair: PairModel) => TechnicianHand,
    zero: number | null = null,
  ): number => expectedBits(predictions(judged, leading, pairs, hand, learned, zero), groups);
  for (const pair of last) {
    const setup = pair.pair.label;
    proposals.push({
      action: 'rehang',
      minutes: MINUTES.rehang,
      setup,
      spoiling: spoiled.has(setup),
      bits: () => predict([pair], (p) => p.hand),
      words: () => {
        const height = judged.heights.find(
          (h) => h.setup === pair.pair.label && h.station === stationOf(judged, pair),
        );
        return rehangWords(pair.pair, height, judged.pZeroMisset);
      },
    });
    const other = bestOther(learned, pair.pair.technician);
    if (!other) continue;
    proposals.push({
      action: 'other-technician',
      minutes: MINUTES.otherTechnician,
      setup,
      spoiling: spoiled.has(setup),
      bits: () => predict([pair], () => other.hand),
      words: () => otherTechnicianWords(pair.pair, other.name),
    });
  }
  const first = mostDoubtful(judged, last);
  if (first) {
    for (const second of last) {
      if (first.pair.gauge === second.pair.gauge) continue;
      proposals.push({
        action: 'exchange',
        minutes: MINUTES.exchange,
        setup: first.pair.label,
        other: second.pair.label,
        spoiling: spoiled.has(first.pair.label),
        bits: () => predict([first, second], (p) => p.hand),
        words: () => exchangeWords(first.pair, second.pair),
      });
    }
  }
  for (const zero of lastZeros(judged)) {
    const hung = judged.model.zeros[zero];
    if (!hung) continue;
    proposals.push({
      action: 'rehang',
      minutes: MINUTES.rehang * (1 + last.length),
      setup: hung.pair.label,
      spoiling: spoiled.has(hung.pair.label),
      bits: () => predict(last, (p) => p.hand, zero),
      words: () => zeroWords(hung.pair),
    });
  }
  for (const { point } of unread) {
    const bits = lengthBits(judged, leading, point, learned);
    if (bits <= 0) continue;
    proposals.push({
      action: 'read-length',
      minutes: MINUTES.length,
      setup: null,
      point,
      spoiling: false,
      bits: () => bits,
      words: () => lengthWords(point),
    });
  }
  return { proposals, open };
}

const stationOf = (judged: JudgedRound, pair: PairModel): number =>
  judged.frame.stations[pair.station]?.x ?? Number.NaN;

/** The explanations that carry nearly all weight, each with its pattern of damage and of mis-set gauges. */
function leadingOf(judged: JudgedRound): Leading[] {
  const { found } = judged;
  const top = found.explanations.slice(0, LEADING);
  const total = top.reduce((sum, { weight }) => sum + weight, 0);
  return top.map(({ weight, explanation }) => ({
    weight: weight / total,
    explanation,
    group: groupOf(judged, explanation),
  }));
}

/** What an explanation takes to be wrong: a pattern at each station, then for each setup which hangers. */
function groupOf({ model, frame }: JudgedRound, explanation: Explanation): string {
  let group = '';
  for (let g = 0; g < frame.stations.length; g++) group += String(patternAt(model, explanation, g));
  model.zeros.forEach((zero, k) => {
    group += wrong(componentAt(zero.settings, explanation.zeroSettings[k] ?? 0).misset);
  });
  model.steps.forEach((pair, i) => {
    group += wrong(componentAt(pair.settings, explanation.settings[i] ?? 0).misset);
  });
  return group;
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

/** Setups of zero gauges that are likelier mis-set than not. */
function spoiledBy(judged: JudgedRound): ReadonlySet<string> {
  const spoiled = new Set<string>();
  // One of them is no likelier mis-set than any of them.
  if (judged.pZeroMisset < 0.5 - ROUNDING) return spoiled;
  for (const zero of lastZeros(judged)) {
    const hung = judged.model.zeros[zero];
    if (hung && zeroMisset(judged, [hung]) >= 0.5) spoiled.add(hung.pair.label);
  }
  return spoiled;
}

interface Other {
  name: string;
  hand: TechnicianHand;
}

/** The steadiest hands that enough is known of, the steadiest first: whoever measures, one of two is another. */
const steadiest = new WeakMap<Learned, Other[]>();

function bestOther(learned: Learned, technician: string): Other | undefined {
  let others = steadiest.get(learned);
  if (!others) {
    others = Object.entries(learned.technicians)
      .flatMap(([name, hand]) => (hand.setups >= 10 ? [{ name, hand }] : []))
      .sort((a, b) => a.hand.setting - b.hand.setting)
      .slice(0, 2);
    steadiest.set(learned, others);
  }
  return others.find(({ name }) => name !== technician);
}
