import { SLIP_WORDS } from '@/lib/assess/cause/signature';
import type { HeightVerdict } from '@/lib/assess/types';
import type { RoundHabit } from '../keys';
import { isDecided, type RoundContext, shownOf } from './context';

const CLEARANCE = [SLIP_WORDS['clearance-omitted'], SLIP_WORDS['clearance-twice']];
const MARK = [SLIP_WORDS['other-mark']];

/** A zero gauge is called mis-set where that is likelier than not. */
const LIKELIER = 0.5;

/**
 * Slips of setting, by the verdicts: a round shows one where any setup of this technician in it does. Rounds and not
 * setups are counted, since who forgets the clearance at one gauge often forgets it at the next.
 */
export function gatherSlips(context: RoundContext): void {
  const { round, verdict } = context;
  if (verdict === null || !isDecided(context)) return;
  const bySetup = new Map<string, HeightVerdict[]>();
  for (const height of verdict.heights) {
    const list = bySetup.get(height.setup);
    if (list === undefined) bySetup.set(height.setup, [height]);
    else list.push(height);
  }
  const shows = new Map<string, Map<RoundHabit, boolean>>();
  for (const setup of round.setups) {
    const heights = bySetup.get(setup.label);
    if (heights === undefined) continue;
    const sheaf = context.sheafOf(setup.technician);
    const own = shows.get(setup.technician) ?? new Map<RoundHabit, boolean>();
    shows.set(setup.technician, own);
    const judge = (habit: RoundHabit, does: boolean): void => {
      sheaf.look(habit);
      own.set(habit, does || (own.get(habit) ?? false));
      if (does) sheaf.show(habit, shownOf(context, setup));
    };
    if (round.clearance > 0) judge('clearance-forgotten', heights.some(named(CLEARANCE)));
    judge('another-mark', heights.some(named(MARK)));
    const zeros = heights.filter(({ zero }) => zero);
    if (zeros.length > 0) {
      judge(
        'careless-zero',
        zeros.some(({ p }) => p.gauge + p.both > LIKELIER),
      );
    }
  }
  for (const [technician, own] of shows) {
    for (const [habit, does] of own) context.sheafOf(technician).round(habit, does);
  }
}

const named =
  (words: readonly (string | null)[]) =>
  ({ signature }: HeightVerdict): boolean =>
    signature !== null && words.includes(signature);
