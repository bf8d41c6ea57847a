import { Panel } from '@/app/_look/panel';
import { count } from '@/app/_words/numbers';
import type { NextCheck, RoundVerdict } from '@/lib/assess';
import styles from './checks.module.css';

const ACTION_NAMES: Record<NextCheck['action'], string> = {
  rehang: 'Hang again',
  'read-length': 'Read a length',
  exchange: 'Exchange two gauges',
  'other-technician': 'Another technician',
};

/** Everything that could be checked next in this round, the most doubt settled a minute first. */
export function Checks({ verdict }: { verdict: RoundVerdict }) {
  return (
    <Panel
      id="checks"
      title="What to check next"
      note="Best first: the most doubt settled a minute, but a zero gauge that is likely mis-set before all others. One bit is the doubt of a coin toss; minutes are a rule of thumb."
    >
      <List verdict={verdict} />
    </Panel>
  );
}

function List({ verdict: { decidable, nextChecks } }: { verdict: RoundVerdict }) {
  if (!decidable) {
    return (
      <p>
        The center section comes first: no check of a height tells anything before the datum can be trusted.
      </p>
    );
  }
  if (nextChecks.length === 0) {
    return (
      <p>
        No single check would tell much more about this round than its readings already do. Whatever is likely
        the gauge is still to be hung again and read again.
      </p>
    );
  }
  return (
    <ol className={styles.list}>
      {nextChecks.map(({ action, words, gainBits, minutes }) => (
        <li key={words}>
          <p>
            <b>{ACTION_NAMES[action]}.</b> {words}
          </p>
          <p className={styles.cost}>
            {gainBits.toFixed(2)} bits, about {count(Math.round(minutes), 'minute')}
          </p>
        </li>
      ))}
    </ol>
  );
}
