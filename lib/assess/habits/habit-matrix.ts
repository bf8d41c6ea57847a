import { benjaminiHochberg } from '@/lib/stats/multiplicity';
import { type HabitEffect, type Judgement, TESTS } from './judge';
import { HABITS, type HabitKey } from './keys';
import type { Shown } from './shown';
import type { HabitTally } from './tally';

/** Expected share of false findings among all findings, over all people and habits. */
export const FALSE_ALARM_RATE = 0.05;

/** The least p that `strength` tells apart. */
const LEAST_P = 1e-300;

export type HabitState = 'found' | 'not found' | 'too few readings';

/** One technician and one habit. */
export interface HabitCell {
  technician: string;
  habit: HabitKey;
  state: HabitState;
  /** Of this test alone; null where nothing could be tested. */
  p: number | null;
  /** By Benjamini and Hochberg over all people and habits that could be tested. */
  adjustedP: number | null;
  /** −log₁₀ of the adjusted p: comparable between habits and people; 1.3 is the least that is found. Null without p. */
  strength: number | null;
  effect: HabitEffect | null;
  /** A sentence with the numbers, or why there are none. */
  evidence: string;
  /** How many setups were looked at. */
  setups: number;
  /** The newest setups that show it, `job/setup`; empty where it was not found. */
  shownBy: string[];
}

/** A cell whose habit was found. */
export interface HabitFinding extends HabitCell {
  state: 'found';
  p: number;
  adjustedP: number;
  strength: number;
}

/** The work of a matrix in parts: whoever asks again and again may remember them. */
export interface MatrixWork {
  /** All hands for one habit, by technician: what the tallies hold beside `partOf` of its test changes nothing. */
  judge: typeof judgeAll;
  /** The newest setups of a hand that show something: half of what tallies hold, and asked for only where it was found. */
  shown: (technician: string, what: string) => readonly Shown[];
}

/** Hands so different that the others should not be measured by them: p, times the hands. */
const OUTLYING = 0.01;

/** At most this often are outlying hands taken out of the comparison. */
const PASSES = 3;

/**
 * Every technician by every habit, technicians in the order given, habits in the order of `HABITS`. `tallies` hold one
 * sum (`addTallies`) for each technician of the shop: a test compares each with the others.
 *
 * The state is 'found' where the adjusted p is at most `FALSE_ALARM_RATE`; otherwise 'too few readings' where a habit
 * worth training would hardly have shown (`judge/sizes.ts`), and 'not found' where it would have.
 */
export function habitMatrix(
  tallies: ReadonlyMap<string, HabitTally>,
  {
    judge = judgeAll,
    shown = (technician, what) => tallies.get(technician)?.shown[what] ?? [],
  }: Partial<MatrixWork> = {},
): HabitCell[] {
  const judged = HABITS.map((habit) => ({ habit, judgements: judge(habit, tallies) }));
  const cells = [...tallies].flatMap(([technician, tally]) =>
    judged.flatMap(({ habit, judgements }) => {
      const judgement = judgements.get(technician);
      return judgement === undefined ? [] : [{ technician, habit, tally, judgement }];
    }),
  );
  const tested = cells.flatMap(({ judgement }) => (judgement.p === null ? [] : [judgement.p]));
  const adjusted = benjaminiHochberg(tested);
  let next = 0;
  return cells.map(({ technician, habit, tally, judgement }) => {
    const { p, effect, evidence } = judgement;
    const adjustedP = p === null ? null : (adjusted[next++] ?? 1);
    const state = stateOf(judgement, adjustedP);
    return {
      technician,
      habit,
      state,
      p,
      adjustedP,
      strength: adjustedP === null ? null : Math.abs(Math.log10(Math.max(LEAST_P, adjustedP))),
      effect,
      evidence,
      setups: tally.looked[habit] ?? 0,
      shownBy: state === 'found' ? shown(technician, judgement.shown).map(({ label }) => label) : [],
    };
  });
}

/** The habits found, strongest evidence first. */
export function habitsOf(tallies: ReadonlyMap<string, HabitTally>): HabitFinding[] {
  return habitMatrix(tallies)
    .filter(isFound)
    .sort((a, b) => b.strength - a.strength || (a.technician < b.technician ? -1 : 1));
}

const isFound = (cell: HabitCell): cell is HabitFinding => cell.state === 'found';

function stateOf({ enough }: Judgement, adjustedP: number | null): HabitState {
  if (adjustedP !== null && adjustedP <= FALSE_ALARM_RATE) return 'found';
  return adjustedP !== null && enough ? 'not found' : 'too few readings';
}

/**
 * One habit over all hands. Whoever stands out beyond doubt is judged again by the others, but no longer stands among
 * those that the others are judged by: else one hand with a habit makes all others look as if they had the opposite.
 */
export function judgeAll(
  habit: HabitKey,
  all: ReadonlyMap<string, HabitTally>,
): ReadonlyMap<string, Judgement> {
  const judge = TESTS[habit].among(all);
  let reference = new Set(all.keys());
  for (let pass = 1; ; pass++) {
    const among = reference;
    const judgements = new Map([...all.keys()].map((name) => [name, judge(name, among)]));
    const ordinary = new Set(
      [...reference].filter((name) => (judgements.get(name)?.p ?? 1) * all.size > OUTLYING),
    );
    if (pass === PASSES || ordinary.size === reference.size || ordinary.size < 2) return judgements;
    reference = ordinary;
  }
}
