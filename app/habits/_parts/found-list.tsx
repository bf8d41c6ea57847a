import Link from 'next/link';
import { effectWords, habitAddress } from '@/app/_words/habits';
import { HABIT_TEXTS, type HabitCell } from '@/lib/assess/habits';
import styles from './found-list.module.css';

interface FoundListProps {
  cells: readonly HabitCell[];
  /** Whose each is stands before it, where they are of several. */
  named?: boolean;
  empty: string;
}

/** The habits found among these, each leading to its evidence and how to train it. */
export function FoundList({ cells, named = false, empty }: FoundListProps) {
  const found = cells.filter(({ state }) => state === 'found');
  if (found.length === 0) return <p>{empty}</p>;
  return (
    <ul data-plain className={styles.list}>
      {found.map(({ technician, habit, effect }) => (
        <li key={`${technician} ${habit}`}>
          <Link href={habitAddress(habit, technician)} prefetch={false}>
            {named ? `${technician}: ` : ''}
            {HABIT_TEXTS[habit].name}
          </Link>
          <span>{effect === null ? '' : effectWords(effect)}</span>
        </li>
      ))}
    </ul>
  );
}
