import Link from 'next/link';
import type { Figure } from '@/app/_look/figures-row';
import { Panel } from '@/app/_look/panel';
import { drawnOnce } from '@/app/_look/still';
import { chance, effectName, effectValue, unitOf } from '@/app/_words/habits';
import { brief, grouped } from '@/app/_words/numbers';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import { FALSE_ALARM_RATE, type HabitCell } from '@/lib/assess/habits';
import { StateTag } from './state-tag';
import styles from './evidence.module.css';

interface EvidenceProps {
  cell: HabitCell;
  /** Where all setups of the technician that were looked at stand. */
  setups: string;
}

/** What the readings of one technician say of one habit. */
export const Evidence = drawnOnce(function Evidence({ cell, setups }: EvidenceProps) {
  const t = words('habits');
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
      <p className={styles.sentence}>{told(cell.evidence)}</p>
      <Facts
        facts={[
          {
            name: effectName(habit),
            value: effect === null ? t('none') : effectValue(effect.value, effect.unit) + unitOf(effect.unit),
            detail: effect === null ? t('evidence.nothing') : interval(cell),
          },
          {
            name: t('evidence.p'),
            value: p === null ? t('none') : chance(p),
            detail: t('evidence.pDetail'),
          },
          {
            name: t('evidence.adjusted'),
            value: adjustedP === null ? t('none') : chance(adjustedP),
            detail: t('evidence.adjustedDetail', { rate: brief(FALSE_ALARM_RATE, 4) }),
          },
          {
            name: t('evidence.setups'),
            value: grouped(cell.setups),
            detail: (
              <Link href={setups} prefetch={false}>
                {t('evidence.allSetups', { technician })}
              </Link>
            ),
          },
        ]}
      />
    </Panel>
  );
});

function interval({ effect }: HabitCell): string {
  if (effect === null) return '';
  const t = words('habits');
  const { low, high, unit, reference } = effect;
  const ends = { low: effectValue(low, unit), high: effectValue(high, unit) };
  return reference === null
    ? t('evidence.interval', ends)
    : t('evidence.intervalBeside', { ...ends, reference: effectValue(reference, unit) });
}

/** Figures beside each other, smaller than those of a page's head: a p is long, and none of them is the answer. */
function Facts({ facts }: { facts: Figure[] }) {
  return (
    <dl className={styles.facts}>
      {facts.map(({ name, value, detail }) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd className={styles.value}>{value}</dd>
          <dd className={styles.detail}>{detail}</dd>
        </div>
      ))}
    </dl>
  );
}
