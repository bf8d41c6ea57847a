import Link from 'next/link';
import { habitName } from '@/app/_words/habit-name';
import { effectWords, habitAddress } from '@/app/_words/habits';
import { words } from '@/app/_words/words';
import type { HabitCell } from '@/lib/assess/habits';
import type { HabitPlace } from './habit-question';
import styles from './found-list.module.css';

interface FoundListProps {
  cells: readonly HabitCell[];
  /** Whose each is stands before it, where they are of several. */
  named?: boolean;
  empty: string;
  /** Where each leads; to the whole history where it is not said. */
  place?: HabitPlace;
}

/** The habits found among these, each leading to its evidence and how to train it. */
export function FoundList({ cells, named = false, empty, place = habitAddress }: FoundListProps) {
  const found = cells.filter(({ state }) => state === 'found');
  if (found.length === 0) return <p>{empty}</p>;
  return (
    <ul data-plain className={styles.list}>
      {found.map(({ technician, habit, effect }) => (
        <li key={`${technician} ${habit}`}>
          <Link href={place(habit, technician)} prefetch={false}>
            {named ? words('habits')('found.of', { technician, habit: habitName(habit) }) : habitName(habit)}
          </Link>
          <span>{effect === null ? '' : effectWords(effect)}</span>
        </li>
      ))}
    </ul>
  );
}
