import { medianAbsoluteDeviation } from 'simple-statistics';
import type { Job } from '@/lib/measure/types';
import { type Learned, startingPoint } from '../cause/learned';
import type { SearchEffort } from '../cause/search';
import { type Pass, partsOfPass, sumOfParts, tallyPart } from './pass';
import { readingSds } from './reading';
import { type Survey, surveyJobs, surveyOf } from './survey';
import type { Tally } from './tally';
import { update } from './update';

const COARSE: SearchEffort = { depth: 6, breadth: 60, share: 0.99, byKind: { alone: 3.5, together: 5 } };
const FINE: SearchEffort = { depth: 7, breadth: 150, share: 0.995, byKind: { alone: 4.5, together: 6 } };

/** At most so many rounds are looked at. */
const MOST = 1600;

interface Planned {
  rounds: number;
  effort: SearchEffort;
}

/**
 * Passes over the rounds: on few, on more, on half as many as are looked at, which leads to within a standard error of
 * where all of them do; then a fine one on all. From a far start it takes four; fewer rounds are passed over more often,
 * which costs no more.
 */
function passesFor(rounds: number): Planned[] {
  const all = Math.min(rounds, MOST);
  const last = Math.min(3, Math.ceil(MOST / all));
  return [
    ...[100, 400, MOST / 2].map((some) => ({ rounds: some, effort: COARSE })),
    ...Array.from({ length: last }, (_, i) => ({ rounds: all, effort: i === last - 1 ? FINE : COARSE })),
  ];
}

export interface LearnOptions {
  /** Called before each pass with how much is done, from 0 to 1. */
  onProgress?: (done: number) => void;
}

/**
 * Estimates from the shop's own rounds everything the inference needs to know in advance: reading and setting
 * sd and bias of each technician, bias of each gauge, how often and how settings go wrong, where and how much
 * bodies are damaged. An iterative fit (expectation over the explanations of each round, then the likeliest
 * parameters under weak priors); large shops are learned from an even sample of at most 1600 rounds.
 */
export function learn(jobs: readonly Job[], options: LearnOptions = {}): Learned {
  const passes = learningFrom(jobs, options);
  let step = passes.next();
  while (step.done !== true)
    step = passes.next(sumOfParts(step.value, partsOfPass(step.value).map(tallyPart)));
  return step.value;
}

/** The same, pass by pass, where the jobs are at hand. */
export const learningFrom = (jobs: readonly Job[], options?: LearnOptions): Generator<Pass, Learned, Tally> =>
  learning(
    jobs.flatMap((job) => job.rounds),
    surveyOf([surveyJobs(jobs)]),
    options,
  );

/**
 * The same, pass by pass: whoever runs it works out what a pass says, here or on several threads.
 * @param rounds all of the shop, in order, or whatever stands for them where the passes are worked out.
 */
export function* learning<Looked>(
  rounds: readonly Looked[],
  survey: Survey,
  options: LearnOptions = {},
): Generator<Pass<Looked>, Learned, Tally> {
  const { heightSetups, gauges, within, deviations } = survey;
  const reading = readingSds(within);
  let learned = startingPoint();
  learned.newTechnician.reading = reading.shop;
  learned.newTechnician.setting = settingStart(deviations) ?? learned.newTechnician.setting;
  for (const name of [...heightSetups.keys()].sort()) {
    learned.technicians[name] = { ...learned.newTechnician, reading: reading.of(name) };
  }
  for (const name of [...gauges].sort()) learned.gauges[name] = { ...learned.newGauge };
  const passes = passesFor(rounds.length);
  for (const [index, { rounds: most, effort }] of passes.entries()) {
    options.onProgress?.(index / passes.length);
    const tally = yield { rounds: evenly(rounds, most), learned, effort };
    if (tally.rounds > 0) learned = update(learned, tally);
  }
  options.onProgress?.(1);
  for (const [name, hand] of Object.entries(learned.technicians)) hand.setups = heightSetups.get(name) ?? 0;
  return { ...learned, rounds: rounds.length };
}

/**
 * Where the setting sds start: half the robust spread of the heights, since a height away from the zero stations
 * carries its own setting and those of two zero gauges. A far start would take many passes.
 */
function settingStart(deviations: number[]): number | null {
  if (deviations.length < 10) return null;
  return Math.min(3, Math.max(0.3, 0.5 * 1.4826 * medianAbsoluteDeviation(deviations)));
}

/** At most `count` rounds, spread evenly over the history. */
function evenly<Looked>(rounds: readonly Looked[], count: number): Looked[] {
  if (rounds.length <= count) return [...rounds];
  return Array.from({ length: count }, (_, i) => rounds[Math.floor((i * rounds.length) / count)]).filter(
    (round) => round !== undefined,
  );
}
