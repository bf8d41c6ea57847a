import type { ReactNode } from 'react';
import { classNames } from '@/app/_look/class-names';
import styles from './hypothesis-figure.module.css';

/** What the shapes of the figures mean; the same for all of them. */
export function Legend() {
  return (
    <ul className={styles.legend} data-plain>
      <Entry name="Read">
        <rect className={styles.read} x={8} y={4} width={10} height={18} />
      </Entry>
      <Entry name="Earlier setup of the same station">
        <rect className={classNames(styles.read, styles.earlier)} x={8} y={4} width={10} height={18} />
      </Entry>
      <Entry name="Expected under the explanation">
        <rect className={styles.expected} x={8} y={9} width={10} height={14} />
        <path className={styles.tip} d="M13 3l6 6l-6 6l-6 -6z" />
      </Entry>
      <Entry name="Datum as the sheet has it">
        <path className={styles.datum} d="M1 13h24" />
      </Entry>
      <Entry name="What the datum alone would make heights read, under the explanation">
        <path className={styles.tilt} d="M1 18L25 8" />
      </Entry>
      <Entry name="Zero station">
        <path className={styles.zeroMark} d="M4 21h18l-9 -16z" />
      </Entry>
      <Entry name="Tolerance">
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
