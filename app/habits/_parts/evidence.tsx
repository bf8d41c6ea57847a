import Link from 'next/link';
import type { Figure } from '@/app/_look/figures-row';
import { Panel } from '@/app/_look/panel';
import { chance, effectName, effectValue, unitOf } from '@/app/_words/habits';
import { grouped } from '@/app/_words/numbers';
import { FALSE_ALARM_RATE, type HabitCell } from '@/lib/assess/habits';
import { StateTag } from './state-tag';
import styles from './evidence.module.css';

interface EvidenceProps {
  cell: HabitCell;
  /** Where all setups of the technician that were looked at stand. */
  setups: string;
}

/** What the readings of one technician say of one habit. */
export function Evidence({ cell, setups }: EvidenceProps) {
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
      <Facts
        facts={[
          {
            name: effectName(habit),
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
              <Link href={setups} prefetch={false}>
                All setups of {technician}
              </Link>
            ),
          },
        ]}
      />
    </Panel>
  );
}

function interval({ effect }: HabitCell): string {
  if (effect === null) return '';
  const { low, high, unit, reference } = effect;
  const beside = reference === null ? '' : `; without the habit ${effectValue(reference, unit)}`;
  return `95 % interval ${effectValue(low, unit)} to ${effectValue(high, unit)}${beside}.`;
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
