import type { ReactNode } from 'react';
import styles from './figures-row.module.css';

export interface Figure {
  name: string;
  value: ReactNode;
  /** Its uncertainty, or what it is of. */
  detail?: ReactNode;
}

/** A few large figures in a row, each with its uncertainty under it. */
export function FiguresRow({ figures }: { figures: Figure[] }) {
  return (
    <dl className={styles.row}>
      {figures.map((figure) => (
        <div key={figure.name}>
          <dt>{figure.name}</dt>
          <dd className={styles.value}>{figure.value}</dd>
          {figure.detail !== undefined && <dd className={styles.detail}>{figure.detail}</dd>}
        </div>
      ))}
    </dl>
  );
}
