import { drawnOnce } from '@/app/_look/still';
import { roundAnchor } from '@/app/_words/address';
import { roundName, sectionInSentence } from '@/app/_words/jobs';
import { words } from '@/app/_words/words';
import { recordedDimensions } from '@/lib/assess';
import type { Round } from '@/lib/measure';
import styles from './job-numbers.module.css';
import type { JobRow } from '@/lib/access';

/** The rounds of the job at a glance, each a link to its place below. */
export const JobNumbers = drawnOnce(function JobNumbers({ row, rounds }: { row: JobRow; rounds: Round[] }) {
  const t = words('jobs');
  return (
    <nav aria-label={t('rounds.label')}>
      <ol className={styles.rounds} data-plain>
        {rounds.map((round) => {
          const record = recordedDimensions(round);
          const out = record.filter((dimension) => !dimension.within).length;
          return (
            <li key={`${round.stage} ${round.attempt}`}>
              <a href={`#${roundAnchor(round.stage, round.attempt)}`}>
                <b>{roundName(round.stage, round.attempt)}</b>
                <span>{t('rounds.out', { out, n: record.length })}</span>
              </a>
            </li>
          );
        })}
      </ol>
      {row.sectionsOut.length > 0 && (
        <p className={styles.out}>
          {t('rounds.sectionsOut', {
            sections: row.sectionsOut.map(sectionInSentence).join(', '),
            n: row.sectionsOut.length,
          })}
        </p>
      )}
    </nav>
  );
});
