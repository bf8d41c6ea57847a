import Link from 'next/link';
import type { HabitsOf } from '@/app/habits/_parts/by-technician';
import { Table } from '@/app/_look/table';
import { technicianAddress } from '@/app/_words/address';
import { habitAddress } from '@/app/_words/habits';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import { HABIT_TEXTS } from '@/lib/assess/habits';
import styles from './habits-found.module.css';

/** Which habits each technician's readings show, in the order of codes. */
export function HabitsFound({ hands }: { hands: readonly HabitsOf[] }) {
  const t = words('training');
  return (
    <Table
      caption={t('habits.caption')}
      captionOutOfSight
      rows={hands}
      rowKey={({ technician }) => technician}
      empty={t('habits.empty')}
      columns={[
        {
          key: 'technician',
          head: t('technician'),
          names: true,
          cell: ({ technician }) => (
            <Link href={technicianAddress(technician)} prefetch={false}>
              {technician}
            </Link>
          ),
        },
        {
          key: 'found',
          head: t('habits.found'),
          cell: ({ technician, cells }) => foundOf(technician, cells),
        },
        {
          key: 'few',
          head: t('habits.tooFew'),
          numeric: true,
          cell: ({ cells }) =>
            t('habits.of', {
              few: cells.filter(({ state }) => state === 'too few readings').length,
              all: cells.length,
            }),
        },
      ]}
    />
  );
}

function foundOf(technician: string, cells: HabitsOf['cells']) {
  const found = cells.filter(({ state }) => state === 'found');
  if (found.length === 0) return words('training')('habits.none');
  return (
    <span className={styles.links}>
      {found.map(({ habit }) => (
        <Link key={habit} href={habitAddress(habit, technician)} prefetch={false}>
          {told(HABIT_TEXTS[habit].name)}
        </Link>
      ))}
    </span>
  );
}
