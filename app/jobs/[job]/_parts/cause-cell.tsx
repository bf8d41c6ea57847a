import { Tag } from '@/app/_look/tag';
import { probability, signedMillimetres } from '@/app/_words/numbers';
import {
  CAUSE_NAMES,
  VERDICT_GLYPHS,
  VERDICT_NAMES,
  VERDICT_SENTENCES,
  type Verdict,
} from '@/app/_words/verdicts';
import { CAUSES, type Cause } from '@/lib/measure';
import type { HeightRow } from './heights';
import styles from './cause-cell.module.css';

/** The verdict on a height with what stands behind it: four probabilities, both parts, a slip that fits. */
export function CauseCell({ row, verdict }: { row: HeightRow; verdict: Verdict }) {
  const told = row.verdict;
  if (told === null) return <span className={styles.none}>not judged</span>;
  return (
    <details className={styles.cause}>
      <summary>
        <Tag name={VERDICT_GLYPHS[verdict]}>{VERDICT_NAMES[verdict]}</Tag>
        <span className={styles.leading}>
          {verdict === 'undecided' ? leading(told.p) : probability(told.p[verdict])}
        </span>
      </summary>
      <div className={styles.more}>
        <p>{VERDICT_SENTENCES[verdict]}</p>
        <dl className={styles.list}>
          {CAUSES.map((cause) => (
            <div key={cause}>
              <dt>{CAUSE_NAMES[cause]}</dt>
              <dd>{probability(told.p[cause])}</dd>
            </div>
          ))}
          <div>
            <dt>Gauge part</dt>
            <dd>{signedMillimetres(told.misset)}</dd>
          </div>
          <div>
            <dt>Body part</dt>
            <dd>{signedMillimetres(told.body)}</dd>
          </div>
        </dl>
        {told.signature !== null && <p>The size fits a known slip: {told.signature}.</p>}
      </div>
    </details>
  );
}

/** The classes that weigh, the heaviest first: `gauge 50 %, body 40 %`. */
function leading(p: Record<Cause, number>): string {
  return CAUSES.filter((cause) => p[cause] >= 0.1)
    .sort((a, b) => p[b] - p[a])
    .map((cause) => `${cause} ${probability(p[cause])}`)
    .join(', ');
}
