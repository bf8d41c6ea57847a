import { Note } from '@/app/_look/note';
import { count } from '@/app/_words/numbers';
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
  if (verdict === null) {
    return (
      <Note>
        <p>The heights of this round are not judged yet. Reload the page in a moment.</p>
      </Note>
    );
  }
  if (!verdict.decidable) {
    return (
      <Note kind="caution">
        <p>
          <b>Center section first.</b>{' '}
          {verdict.why ?? 'The center section does not carry the datum in this round.'}
        </p>
        <p>
          Until that is settled no height of this round is decided: the datum plane hangs on the center
          section.
        </p>
      </Note>
    );
  }
  const [first, ...others] = zeroFirst(verdict);
  if (first === undefined) {
    return (
      <Note>
        <p>
          {rehang.length === 0
            ? 'No single re-check would tell much more about this round than its readings already do.'
            : `Re-hang and read again: ${rehang.join(', ')}. The gauge was likely set wrong there; only a new reading shows where the body is.`}
        </p>
      </Note>
    );
  }
  return (
    <div className={styles.next}>
      <h3>Next check</h3>
      <p className={styles.words}>{first.words}</p>
      <p className={styles.cost}>
        About {count(Math.round(first.minutes), 'minute')}
        {verdict.pZeroMisset < ZERO_LIKELY_MISSET
          ? `; expected to settle ${first.gainBits.toFixed(2)} bits of doubt. One bit is the doubt of a coin toss.`
          : '. The zero gauges come first, whatever else there is to learn: every other height is read against them.'}
      </p>
      {others.length > 0 && (
        <details data-print="no">
          <summary>{count(others.length, 'other check')}</summary>
          <ol className={styles.others}>
            {others.map((check) => (
              <li key={check.words}>
                {check.words} ({check.gainBits.toFixed(2)} bits, about{' '}
                {count(Math.round(check.minutes), 'minute')})
              </li>
            ))}
          </ol>
        </details>
      )}
    </div>
  );
}
