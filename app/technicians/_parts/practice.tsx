import { drawnOnce } from '@/app/_look/still';
import { FoundList } from '@/app/habits/_parts/found-list';
import { Panel } from '@/app/_look/panel';
import { OwnSignals } from '@/app/rates/signals/_parts/own-signals';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import type { HandAnswer } from '@/lib/assess/answers';
import type { HabitCell } from '@/lib/assess/habits';
import type { Signal } from '@/lib/assess/signals';
import styles from './practice.module.css';

interface PracticeProps {
  /** Null before the first answer. */
  hand: HandAnswer | null;
  /** Of this technician. */
  habits: readonly HabitCell[];
  changes: readonly Signal[];
  /** Whether the reader may see everybody's charts. */
  charts: boolean;
}

/** What to practise next, what changed lately, and the habits found, each leading to how to train it. */
export const Practice = drawnOnce(function Practice({ hand, habits, changes, charts }: PracticeProps) {
  const t = words('hand');
  return (
    <Panel id="practice" title={t('practice.title')}>
      <p className={styles.sentence}>{hand === null ? t('practice.notYet') : told(hand.practice.sentence)}</p>
      <OwnSignals signals={changes} charts={charts} />
      <h3>{t('practice.habits')}</h3>
      <FoundList cells={habits} empty={noneFound(habits)} />
      {habits.some(({ state }) => state === 'found') && <p className={styles.quiet}>{t('practice.opens')}</p>}
    </Panel>
  );
});

function noneFound(habits: readonly HabitCell[]): string {
  const t = words('hand');
  if (habits.length === 0) return t('practice.notLooked');
  const few = habits.filter(({ state }) => state === 'too few readings').length;
  return few === 0
    ? t('practice.none', { habits: habits.length })
    : t('practice.noneYet', { habits: habits.length, few });
}
