import { Tag } from '@/app/_look/tag';
import { probability, signedMillimetres } from '@/app/_words/numbers';
import { CALL_GLYPHS, callName, callSentence, causeName } from '@/app/_words/verdicts';
import type { Call, HeightVerdict } from '@/lib/assess';
import { CAUSES, type Cause } from '@/lib/measure';
import styles from './cause-cell.module.css';

interface CauseCellProps {
  /** The verdict on a height or a centre pin; null where there is none yet. */
  told: (Pick<HeightVerdict, 'p' | 'misset' | 'body'> & { signature?: string | null }) | null;
  call: Call;
  /** Where what stands behind it is shown, and of what. */
  evidence: { address: string; of: string };
}

/** The verdict on a height with what stands behind it: four probabilities, both parts, a slip that fits. */
export function CauseCell({ told, call, evidence }: CauseCellProps) {
  if (told === null) return <span className={styles.none}>not judged</span>;
  return (
    <div className={styles.cell}>
      <details className={styles.cause}>
        <summary>
          <Tag name={CALL_GLYPHS[call]}>{callName(call)}</Tag>
          <span className={styles.leading}>{leading(told.p)}</span>
        </summary>
        <div className={styles.more}>
          <p>{callSentence(call)}</p>
          <dl className={styles.list}>
            {CAUSES.map((cause) => (
              <div key={cause}>
                <dt>{causeName(cause)}</dt>
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
          {told.signature !== undefined && told.signature !== null && (
            <p>The size fits a known slip: {told.signature}.</p>
          )}
        </div>
      </details>
      {/* A plain link: the row it leads to is marked as the browser's target, which a page change by script would not set. */}
      <a href={evidence.address} data-print="no">
        Why<span className="out-of-sight">: the evidence for {evidence.of}</span>
      </a>
    </div>
  );
}

/** The classes that weigh, the heaviest first: `gauge 50 %, body 40 %`. */
function leading(p: Record<Cause, number>): string {
  return CAUSES.filter((cause) => p[cause] >= 0.1)
    .sort((a, b) => p[b] - p[a])
    .map((cause) => `${cause} ${probability(p[cause])}`)
    .join(', ');
}
