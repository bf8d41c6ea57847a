import type { ReactNode } from 'react';
import { classNames } from './class-names';
import styles from './panel.module.css';

interface PanelProps {
  /** Also the anchor that other pages link to. */
  id: string;
  title: ReactNode;
  /** What the reader sees here and how to read it. */
  note?: ReactNode;
  /** Without the sheet of paper behind it. */
  bare?: boolean;
  children: ReactNode;
}

/** One part of a page under a second-level heading. */
export function Panel({ id, title, note, bare = false, children }: PanelProps) {
  return (
    <section
      id={id}
      aria-labelledby={`${id}-title`}
      className={classNames(styles.panel, !bare && styles.sheet)}
    >
      <div className={styles.head}>
        <h2 id={`${id}-title`}>{title}</h2>
        {note !== undefined && <p className={styles.note}>{note}</p>}
      </div>
      {children}
    </section>
  );
}
