import Link from 'next/link';
import { percent } from '@/app/_words/numbers';
import type { AtWork } from '../_staging/at-work';
import { LookAgain } from './look-again';
import styles from './at-work-note.module.css';

/** How far a large file is. Looks again by itself, with and without scripts. */
export function AtWorkNote({ task, share }: AtWork) {
  const reading = share < 1;
  return (
    <section className={styles.work} aria-label="How far the file is">
      {/* Said by phase, not by percentage: a voice that counts to a hundred is no help. */}
      <p role="status">
        {reading
          ? 'Reading every line …'
          : task === 'check'
            ? 'Every line is read; comparing them with each other …'
            : 'Every line is read; storing the readings …'}
      </p>
      <div className={styles.bar}>
        <progress
          className={styles.progress}
          aria-label="Lines read"
          max={1}
          value={reading ? share : undefined}
        />
        {reading && <span aria-hidden="true">{percent(share)}</span>}
      </div>
      <p className={styles.hint}>
        {task === 'check'
          ? 'Nothing is stored yet. You can use the other pages meanwhile and come back to this address.'
          : 'You can use the other pages meanwhile: the file is stored as a whole or not at all.'}
      </p>
      <LookAgain />
      <noscript>
        <meta httpEquiv="refresh" content="2" />
        <p>
          <Link href="">Look again</Link>
        </p>
      </noscript>
    </section>
  );
}
