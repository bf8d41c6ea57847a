import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { count } from '@/app/_words/numbers';
import type { NextCheck, RoundVerdict } from '@/lib/assess';

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
      {verdict.decidable ? (
        <Table
          caption="All checks that would tell something about this round"
          captionOutOfSight
          rows={verdict.nextChecks}
          rowKey={({ words }) => words}
          empty="No single check would tell much more about this round than its readings already do. Whatever is likely the gauge is still to be hung again and read again."
          columns={[
            { key: 'action', head: 'Check', names: true, cell: ({ action }) => ACTION_NAMES[action] },
            { key: 'words', head: 'What to do', cell: ({ words }) => words },
            { key: 'bits', head: 'Bits', numeric: true, cell: ({ gainBits }) => gainBits.toFixed(2) },
            {
              key: 'minutes',
              head: 'About',
              numeric: true,
              cell: ({ minutes }) => count(Math.round(minutes), 'minute'),
            },
          ]}
        />
      ) : (
        <p>
          The center section comes first: no check of a height tells anything before the datum can be trusted.
        </p>
      )}
    </Panel>
  );
}
