import type { ReactNode } from 'react';
import styles from './scroll-frame.module.css';

/** Holds what may be wider than the screen, and scrolls by itself so that the page does not. */
export function ScrollFrame({ name, children }: { name: string; children: ReactNode }) {
  return (
    // What scrolls has to be reachable by keyboard (WCAG 2.1.1).
    // eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex
    <div className={styles.frame} role="group" aria-label={name} tabIndex={0}>
      {children}
    </div>
  );
}
