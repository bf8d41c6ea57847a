import { Tag } from '@/app/_look/tag';
import { probability, signedMillimetres } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import { CALL_GLYPHS, callName, callSentence, causeName } from '@/app/_words/verdicts';
import type { Call, HeightVerdict } from '@/lib/assess';
import { CAUSES, type Cause } from '@/lib/measure';
import { told as inTheirWords } from '@/app/_words/told';
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
  const t = words('jobs');
  if (told === null) return <span className={styles.none}>{t('cells.notJudged')}</span>;
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
              <dt>{t('cells.gauge')}</dt>
              <dd>{signedMillimetres(told.misset)}</dd>
            </div>
            <div>
              <dt>{t('cells.body')}</dt>
              <dd>{signedMillimetres(told.body)}</dd>
            </div>
          </dl>
          {told.signature !== undefined && told.signature !== null && (
            <p>{t('cells.slip', { slip: inTheirWords(told.signature) })}</p>
          )}
        </div>
      </details>
      {/* A plain link: the row it leads to is marked as the browser's target, which a page change by script would not set. */}
      <a href={evidence.address} data-print="no">
        {t.rich('cells.why', {
          of: evidence.of,
          out: (chunks) => <span className="out-of-sight">{chunks}</span>,
        })}
      </a>
    </div>
  );
}

/** The classes that weigh, the heaviest first: `gauge 50 %, body 40 %`. */
function leading(p: Record<Cause, number>): string {
  return CAUSES.filter((cause) => p[cause] >= 0.1)
    .sort((a, b) => p[b] - p[a])
    .map((cause) => `${words('jobs')(`cells.classes.${cause}`)} ${probability(p[cause])}`)
    .join(', ');
}
