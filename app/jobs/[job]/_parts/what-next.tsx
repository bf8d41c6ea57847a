import { Note } from '@/app/_look/note';
import { decimal } from '@/app/_words/numbers';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import type { RoundVerdict } from '@/lib/assess';
import { ZERO_LIKELY_MISSET, zeroFirst } from './zero-first';
import styles from './what-next.module.css';

interface WhatNextProps {
  verdict: RoundVerdict | null;
  /** Heights that are likely the gauge. */
  rehang: string[];
}

/** What to do before anybody pulls: the center section first, then the check that settles most. */
export function WhatNext({ verdict, rehang }: WhatNextProps) {
  const t = words('jobs');
  if (verdict === null) {
    return (
      <Note>
        <p>{t('next.pending')}</p>
      </Note>
    );
  }
  if (!verdict.decidable) {
    return (
      <Note kind="caution">
        <p>
          <b>{t('next.centerFirst')}</b> {verdict.why === null ? t('next.noDatum') : told(verdict.why)}
        </p>
        <p>{t('next.untilThen')}</p>
      </Note>
    );
  }
  const [first, ...others] = zeroFirst(verdict);
  if (first === undefined) {
    return (
      <Note>
        <p>{rehang.length === 0 ? t('next.nothing') : t('next.rehang', { heights: rehang.join(', ') })}</p>
      </Note>
    );
  }
  return (
    <div className={styles.next}>
      <h3>{t('next.title')}</h3>
      <p className={styles.words}>{told(first.words)}</p>
      <p className={styles.cost}>
        {t(verdict.pZeroMisset < ZERO_LIKELY_MISSET ? 'next.gain' : 'next.zeros', gainOf(first))}
      </p>
      {others.length > 0 && (
        <details data-print="no">
          <summary>{t('next.others', { n: others.length })}</summary>
          <ol className={styles.others}>
            {others.map((check) => (
              <li key={check.words}>{t('next.other', { words: told(check.words), ...gainOf(check) })}</li>
            ))}
          </ol>
        </details>
      )}
    </div>
  );
}

const gainOf = ({ minutes, gainBits }: RoundVerdict['nextChecks'][number]) => ({
  minutes: Math.round(minutes),
  bits: decimal(gainBits, 2),
});
