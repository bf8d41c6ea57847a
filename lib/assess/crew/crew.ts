import type { Round } from '@/lib/measure/types';
import { type ForetoldHeight, foretoldHeights } from '../calibration';
import type { Learned } from '../cause/learned';
import { type Pass, type Tally, tallyPart } from '../learn';
import { assessRound, type UnreadLength } from '../round';
import type { RoundVerdict } from '../types';

/** What can be worked out apart from everything else. */
export interface Works {
  /** What one part of a pass says. */
  tally: (pass: Pass) => Tally;
  /** Rounds with all that a page shows of them. */
  assess: (task: {
    rounds: readonly { round: Round; unread: readonly UnreadLength[] }[];
    learned: Learned;
  }) => RoundVerdict[];
  /** What was said of each round’s heights before they were proved. */
  foretell: (task: { rounds: readonly Round[]; learned: Learned }) => ForetoldHeight[][];
}

export const WORKS: Works = {
  tally: tallyPart,
  assess: ({ rounds, learned }) => rounds.map(({ round, unread }) => assessRound(round, learned, { unread })),
  foretell: ({ rounds, learned }) => rounds.map((round) => foretoldHeights(round, learned)),
};

/** Whoever does such work. */
export type Crew = {
  [Method in keyof Works]: (task: Parameters<Works[Method]>[0]) => Promise<ReturnType<Works[Method]>>;
} & { close: () => Promise<void> };

/** On this thread, one after the other. */
export const alone: Crew = {
  tally: (pass) => Promise.resolve(WORKS.tally(pass)),
  assess: (task) => Promise.resolve(WORKS.assess(task)),
  foretell: (task) => Promise.resolve(WORKS.foretell(task)),
  close: () => Promise.resolve(),
};
