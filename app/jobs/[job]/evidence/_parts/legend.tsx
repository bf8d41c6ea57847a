import type { ReactNode } from 'react';
import { classNames } from '@/app/_look/class-names';
import styles from './hypothesis-figure.module.css';
import { words } from '@/app/_words/words';

/** What the shapes of the figures mean; the same for all of them. */
export function Legend() {
  const t = words('evidence');
  return (
    <ul className={styles.legend} data-plain>
      <Entry name={t('legend.read')}>
        <rect className={styles.read} x={8} y={4} width={10} height={18} />
      </Entry>
      <Entry name={t('legend.earlier')}>
        <rect className={classNames(styles.read, styles.earlier)} x={8} y={4} width={10} height={18} />
      </Entry>
      <Entry name={t('legend.expected')}>
        <rect className={styles.expected} x={8} y={9} width={10} height={14} />
        <path className={styles.tip} d="M13 3l6 6l-6 6l-6 -6z" />
      </Entry>
      <Entry name={t('legend.datum')}>
        <path className={styles.datum} d="M1 13h24" />
      </Entry>
      <Entry name={t('legend.tilt')}>
        <path className={styles.tilt} d="M1 18L25 8" />
      </Entry>
      <Entry name={t('legend.zero')}>
        <path className={styles.zeroMark} d="M4 21h18l-9 -16z" />
      </Entry>
      <Entry name={t('legend.tolerance')}>
        <rect className={styles.tolerance} x={1} y={5} width={24} height={16} />
      </Entry>
    </ul>
  );
}

function Entry({ name, children }: { name: string; children: ReactNode }) {
  return (
    <li>
      <svg width={26} height={26} viewBox="0 0 26 26" aria-hidden="true" focusable="false">
        {children}
      </svg>
      <span>{name}</span>
    </li>
  );
}
