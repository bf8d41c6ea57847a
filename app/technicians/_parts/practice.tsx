import { FoundList } from '@/app/habits/_parts/found-list';
import { Panel } from '@/app/_look/panel';
import type { HandAnswer } from '@/lib/assess/answers';
import type { HabitCell } from '@/lib/assess/habits';
import styles from './practice.module.css';

interface PracticeProps {
  /** Null before the first answer. */
  hand: HandAnswer | null;
  /** Of this technician. */
  habits: readonly HabitCell[];
}

/** What to practise next, and the habits found, each leading to how to train it. */
export function Practice({ hand, habits }: PracticeProps) {
  return (
    <Panel id="practice" title="What to practise next">
      <p className={styles.sentence}>
        {hand?.practice.sentence ?? 'That can be told once the readings have been assessed.'}
      </p>
      <h3>Habits found in the readings</h3>
      <FoundList cells={habits} empty={noneFound(habits)} />
      {habits.some(({ state }) => state === 'found') && (
        <p className={styles.quiet}>Each opens its evidence, the setups that show it, and how to train it.</p>
      )}
    </Panel>
  );
}

function noneFound(habits: readonly HabitCell[]): string {
  if (habits.length === 0) return 'No habit has been looked for yet.';
  const few = habits.filter(({ state }) => state === 'too few readings').length;
  return few === 0
    ? `None of the ${habits.length} habits looked for was found, though each would have shown at a size worth training.`
    : `None of the ${habits.length} habits looked for was found; ${few} of them could hardly have shown yet in so few readings.`;
}
