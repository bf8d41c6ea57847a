import { roundAnchor } from '@/app/_words/address';
import { roundName, sectionInSentence } from '@/app/_words/jobs';
import { count } from '@/app/_words/numbers';
import { recordedDimensions } from '@/lib/assess';
import type { Round } from '@/lib/measure';
import styles from './job-numbers.module.css';
import type { JobRow } from '@/lib/access';

/** The rounds of the job at a glance, each a link to its place below. */
export function JobNumbers({ row, rounds }: { row: JobRow; rounds: Round[] }) {
  return (
    <nav aria-label="Rounds of this job">
      <ol className={styles.rounds} data-plain>
        {rounds.map((round) => {
          const record = recordedDimensions(round);
          const out = record.filter((dimension) => !dimension.within).length;
          return (
            <li key={`${round.stage} ${round.attempt}`}>
              <a href={`#${roundAnchor(round.stage, round.attempt)}`}>
                <b>{roundName(round.stage, round.attempt)}</b>
                <span>
                  {out === 0 ? 'none' : out} of {count(record.length, 'dimension')} out
                </span>
              </a>
            </li>
          );
        })}
      </ol>
      {row.sectionsOut.length > 0 && (
        <p className={styles.out}>
          Out in the first round after repair:{' '}
          {row.sectionsOut.map((section) => sectionInSentence(section)).join(', ')} section
          {row.sectionsOut.length > 1 && 's'}.
        </p>
      )}
    </nav>
  );
}
