import { Tag } from '@/app/_look/tag';
import { percent, signedMillimetres } from '@/app/_words/numbers';
import { VERDICT_GLYPHS, VERDICT_NAMES, VERDICT_SENTENCES, type Verdict } from '@/app/_words/verdicts';
import { CAUSES } from '@/lib/measure';
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
        <Shares row={row} />
      </summary>
      <div className={styles.more}>
        <p>{VERDICT_SENTENCES[verdict]}</p>
        <dl className={styles.list}>
          {CAUSES.map((cause) => (
            <div key={cause}>
              <dt>
                {VERDICT_NAMES[cause].replace('Likely ', '').replace(/^./, (letter) => letter.toUpperCase())}
              </dt>
              <dd>{percent(told.p[cause])}</dd>
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

/** Four stretches of one bar in the order neither, gauge, body, both; each also has its own hatching. */
function Shares({ row }: { row: HeightRow }) {
  const told = row.verdict;
  if (told === null) return null;
  let start = 0;
  return (
    <svg
      className={styles.shares}
      width="96"
      height="14"
      viewBox="0 0 96 14"
      aria-hidden="true"
      focusable="false"
    >
      {CAUSES.map((cause) => {
        const x = start;
        const width = told.p[cause] * 96;
        start += width;
        return (
          <rect
            key={cause}
            className={styles[cause]}
            x={x}
            width={width}
            y={cause === 'neither' ? 5 : cause === 'gauge' ? 3 : 0}
            height={cause === 'neither' ? 4 : cause === 'gauge' ? 8 : 14}
          />
        );
      })}
    </svg>
  );
}
