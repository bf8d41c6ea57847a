import { drawnOnce } from '@/app/_look/still';
import Link from 'next/link';
import { Table, type Column } from '@/app/_look/table';
import { technicianAddress } from '@/app/_words/address';
import { habitName } from '@/app/_words/habit-name';
import { words } from '@/app/_words/words';
import { HABITS, type HabitCell, type HabitKey } from '@/lib/assess/habits';
import type { HabitsOf } from './by-technician';
import { placesOf, type HabitPlace, type HabitQuestion } from './habit-question';
import { StateTag } from './state-tag';
import styles from './matrix.module.css';

interface Row {
  habit: HabitKey;
  cells: Map<string, HabitCell>;
}

/** Habits down, technicians across, a word in each cell that opens its evidence. On a phone: a list by technician. */
export const Matrix = drawnOnce(function Matrix({
  hands,
  question,
}: {
  hands: readonly HabitsOf[];
  question: HabitQuestion;
}) {
  const place = placesOf(question);
  const t = words('habits');
  return (
    <>
      <div className={styles.wide}>
        <Table
          caption={t('matrix.caption')}
          columns={[
            {
              key: 'habit',
              head: t('matrix.habit'),
              names: true,
              wraps: true,
              cell: ({ habit }) => (
                <Link href={place(habit)} prefetch={false}>
                  {habitName(habit)}
                </Link>
              ),
            },
            ...hands.map(({ technician }) => columnOf(technician, place)),
          ]}
          rows={HABITS.map((habit) => ({
            habit,
            cells: new Map(
              hands.flatMap(({ technician, cells }) =>
                cells.filter((cell) => cell.habit === habit).map((cell) => [technician, cell] as const),
              ),
            ),
          }))}
          rowKey={({ habit }) => habit}
        />
      </div>
      <div className={styles.narrow}>
        {hands.map((hand) => (
          <OneTechnician key={hand.technician} {...hand} place={place} />
        ))}
      </div>
    </>
  );
});

function columnOf(technician: string, place: HabitPlace): Column<Row> {
  return {
    key: technician,
    head: (
      <Link href={technicianAddress(technician)} prefetch={false}>
        {technician}
      </Link>
    ),
    cell: ({ cells }) => {
      const cell = cells.get(technician);
      return cell === undefined ? (
        words('habits')('matrix.notLooked')
      ) : (
        <CellLink cell={cell} place={place} />
      );
    },
  };
}

/** The link's name says whose and which habit, so that it stands by itself in a list of links. */
function CellLink({ cell: { technician, habit, state }, place }: { cell: HabitCell; place: HabitPlace }) {
  return (
    <Link className={styles.cell} href={place(habit, technician)} prefetch={false}>
      <StateTag state={state} />
      <span className="out-of-sight">
        {words('habits')('matrix.inOf', { technician, habit: habitName(habit) })}
      </span>
    </Link>
  );
}

function OneTechnician({ technician, cells, place }: HabitsOf & { place: HabitPlace }) {
  const t = words('habits');
  const found = cells.filter(({ state }) => state === 'found');
  const others = cells.filter(({ state }) => state !== 'found');
  return (
    <section className={styles.hand} aria-label={t('matrix.of', { technician })}>
      <h3>
        <Link href={technicianAddress(technician)} prefetch={false}>
          {technician}
        </Link>
      </h3>
      <CellList cells={found} empty={t('matrix.noneFound')} place={place} />
      <details>
        <summary>{tally(others)}</summary>
        <CellList cells={others} empty="" place={place} />
      </details>
    </section>
  );
}

function CellList({
  cells,
  empty,
  place,
}: {
  cells: readonly HabitCell[];
  empty: string;
  place: HabitPlace;
}) {
  if (cells.length === 0) return empty === '' ? null : <p className={styles.quiet}>{empty}</p>;
  return (
    <ul data-plain className={styles.list}>
      {cells.map((cell) => (
        <li key={cell.habit}>
          <Link href={place(cell.habit, cell.technician)} prefetch={false}>
            {habitName(cell.habit)}
          </Link>
          <StateTag state={cell.state} />
        </li>
      ))}
    </ul>
  );
}

/** `9 not found, 3 with too few readings` */
function tally(cells: readonly HabitCell[]): string {
  const few = cells.filter(({ state }) => state === 'too few readings').length;
  const not = cells.length - few;
  const t = words('habits');
  return few === 0 ? t('matrix.tally', { not }) : t('matrix.tallyFew', { not, few });
}
