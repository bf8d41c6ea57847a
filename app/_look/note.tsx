import type { ReactNode } from 'react';
import { classNames } from './class-names';
import { Glyph } from './glyph';
import styles from './note.module.css';

interface NoteProps {
  /** `caution`: something to heed before acting. `fault`: something went wrong. `plain`: good to know. */
  kind?: 'plain' | 'caution' | 'fault';
  /** Announced when it appears. */
  live?: boolean;
  children: ReactNode;
}

/** A sentence set apart, with a shape for its kind. */
export function Note({ kind = 'plain', live = false, children }: NoteProps) {
  return (
    <div className={classNames(styles.note, styles[kind])} role={live ? 'status' : undefined}>
      <Glyph name={kind === 'plain' ? 'remark' : 'caution'} />
      <div className={styles.text}>{children}</div>
    </div>
  );
}
