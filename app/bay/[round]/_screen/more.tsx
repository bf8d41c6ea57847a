import { Suspense, useState, type ReactNode } from 'react';
import styles from './round-screen.module.css';

/** Something beside the one thing to do: closed until it is wanted, and made only then. */
export function More({ title, children }: { title: string; children: ReactNode }) {
  const [opened, setOpened] = useState(false);
  return (
    <details className={styles.more} onToggle={(event) => event.currentTarget.open && setOpened(true)}>
      <summary>{title}</summary>
      {opened && (
        <div className={styles.inside}>
          <Suspense>{children}</Suspense>
        </div>
      )}
    </details>
  );
}
