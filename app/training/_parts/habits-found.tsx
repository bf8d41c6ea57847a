import Link from 'next/link';
import type { HabitsOf } from '@/app/habits/_parts/by-technician';
import { Table } from '@/app/_look/table';
import { technicianAddress } from '@/app/_words/address';
import { habitAddress } from '@/app/_words/habits';
import { HABIT_TEXTS } from '@/lib/assess/habits';
import styles from './habits-found.module.css';

/** Which habits each technician's readings show, in the order of codes. */
export function HabitsFound({ hands }: { hands: HabitsOf[] }) {
  return (
    <Table
      caption="Habits found, by technician"
      captionOutOfSight
      rows={hands}
      rowKey={({ technician }) => technician}
      empty="Habits are told once readings have been assessed."
      columns={[
        {
          key: 'technician',
          head: 'Technician',
          names: true,
          cell: ({ technician }) => (
            <Link href={technicianAddress(technician)} prefetch={false}>
              {technician}
            </Link>
          ),
        },
        { key: 'found', head: 'Found', cell: ({ technician, cells }) => foundOf(technician, cells) },
        {
          key: 'few',
          head: 'Too few readings to say',
          numeric: true,
          cell: ({ cells }) =>
            `${cells.filter(({ state }) => state === 'too few readings').length} of ${cells.length}`,
        },
      ]}
    />
  );
}

function foundOf(technician: string, cells: HabitsOf['cells']) {
  const found = cells.filter(({ state }) => state === 'found');
  if (found.length === 0) return 'none';
  return (
    <span className={styles.links}>
      {found.map(({ habit }) => (
        <Link key={habit} href={habitAddress(habit, technician)} prefetch={false}>
          {HABIT_TEXTS[habit].name}
        </Link>
      ))}
    </span>
  );
}
