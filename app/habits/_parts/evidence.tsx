import Link from 'next/link';
import { FiguresRow } from '@/app/_look/figures-row';
import { Pager } from '@/app/_look/pager';
import { Panel } from '@/app/_look/panel';
import { address, technicianAddress } from '@/app/_words/address';
import { chance, EFFECT_NAMES, effectValue, habitAddress, unitOf } from '@/app/_words/habits';
import { count, grouped } from '@/app/_words/numbers';
import type { SetupRow } from '@/lib/access';
import { FALSE_ALARM_RATE, type HabitCell } from '@/lib/assess/habits';
import { SetupList } from './setup-list';
import { StateTag } from './state-tag';
import styles from './evidence.module.css';

interface EvidenceProps {
  cell: HabitCell;
  /** This page of the setups that show it. */
  setups: SetupRow[];
  page: number;
  pages: number;
  timeZone: string;
}

/** What the readings of one technician say of one habit, and the setups behind it. */
export function Evidence({ cell, setups, page, pages, timeZone }: EvidenceProps) {
  const { technician, habit, state, effect, p, adjustedP } = cell;
  return (
    <Panel
      id="evidence"
      title={
        <span className={styles.title}>
          {technician} <StateTag state={state} />
        </span>
      }
    >
      <p className={styles.sentence}>{cell.evidence}</p>
      <FiguresRow
        figures={[
          {
            name: EFFECT_NAMES[habit],
            value: effect === null ? 'none' : effectValue(effect.value, effect.unit) + unitOf(effect.unit),
            detail: effect === null ? 'Nothing to measure it by yet.' : interval(cell),
          },
          {
            name: 'p of this test alone',
            value: p === null ? 'none' : chance(p),
            detail: 'How seldom chance alone would show as much.',
          },
          {
            name: 'Adjusted p',
            value: adjustedP === null ? 'none' : chance(adjustedP),
            detail: `For all technicians and habits asked at once; found at ${FALSE_ALARM_RATE} or less.`,
          },
          {
            name: 'Setups looked at',
            value: grouped(cell.setups),
            detail: (
              <Link href={`${technicianAddress(technician)}#setups`} prefetch={false}>
                All setups of {technician}
              </Link>
            ),
          },
        ]}
      />
      {cell.shownBy.length > 0 && (
        <>
          <h3 id="shown">The setups that show it</h3>
          <SetupList
            setups={setups}
            timeZone={timeZone}
            caption={`The newest ${count(cell.shownBy.length, 'setup')} that show it, newest first. Each opens its readings on the job’s page.`}
          />
          <Pager
            page={page}
            pages={pages}
            to={(number) =>
              `${address(habitAddress(habit), { technician, page: number === 1 ? undefined : number })}#shown`
            }
          />
        </>
      )}
    </Panel>
  );
}

function interval({ effect }: HabitCell): string {
  if (effect === null) return '';
  const { low, high, unit, reference } = effect;
  const beside = reference === null ? '' : `; without the habit ${effectValue(reference, unit)}`;
  return `95 % interval ${effectValue(low, unit)} to ${effectValue(high, unit)}${beside}.`;
}
