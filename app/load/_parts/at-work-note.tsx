import Link from 'next/link';
import { percent } from '@/app/_words/numbers';
import type { AtWork } from '../_staging/at-work';
import { LookAgain } from './look-again';
import { READ_FIRST } from '../_staging/read-first';
import styles from './at-work-note.module.css';
import { words } from '@/app/_words/words';

/** How far a large file is. Looks again by itself, with and without scripts. */
export function AtWorkNote({ task, share }: AtWork) {
  const t = words('load');
  const known = share < 1;
  const reading = share < (task === 'check' ? 1 : READ_FIRST);
  return (
    <section className={styles.work} aria-label={t('work.howFar')}>
      {/* Said by phase, not by percentage: a voice that counts to a hundred is no help. */}
      <p role="status">
        {reading ? t('work.reading') : t(task === 'check' ? 'work.comparing' : 'work.writing')}
      </p>
      <div className={styles.bar}>
        <progress
          className={styles.progress}
          aria-label={t('work.linesRead')}
          max={1}
          value={known ? share : undefined}
        />
        {known && <span aria-hidden="true">{percent(share)}</span>}
      </div>
      <p className={styles.hint}>{t(task === 'check' ? 'work.checkHint' : 'work.storeHint')}</p>
      <LookAgain />
      <noscript>
        <meta httpEquiv="refresh" content="2" />
        <p>
          <Link href="">{t('work.lookAgain')}</Link>
        </p>
      </noscript>
    </section>
  );
}
