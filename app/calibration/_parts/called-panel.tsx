import Link from 'next/link';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { Tag } from '@/app/_look/tag';
import { sureFrom } from '@/app/_shop/miss-cost';
import { grouped, percent } from '@/app/_words/numbers';
import { CALL_GLYPHS, callName, CALLS, causeName } from '@/app/_words/verdicts';
import { calledHeights, type Foretold } from '@/lib/assess/calibration';
import { CAUSES } from '@/lib/measure';

/** Every call at the shop's present threshold, and what the heights proved to be. */
export function CalledPanel({ heights, missCost }: { heights: readonly Foretold[]; missCost: number }) {
  return (
    <Panel
      id="calls"
      title="What was called, and what it proved to be"
      note={
        <>
          At the present threshold: likely gauge from {percent(sureFrom(missCost))} on, since missing damage
          is taken to cost {missCost} times a needless re-hang. <Link href="/settings">Set it</Link>.
        </>
      }
    >
      <Table
        caption="Heights by what was called before the check, and what they proved to be"
        rows={calledHeights(heights, CALLS, missCost)}
        rowKey={({ call }) => call}
        columns={[
          {
            key: 'call',
            head: 'Called',
            names: true,
            cell: ({ call }) => <Tag name={CALL_GLYPHS[call]}>{callName(call)}</Tag>,
          },
          { key: 'heights', head: 'Heights', numeric: true, cell: (row) => grouped(row.heights) },
          {
            key: 'damage',
            head: 'The body was off',
            numeric: true,
            cell: ({ body: { share, low, high } }) =>
              share === null || low === null || high === null
                ? 'none'
                : `${percent(share)} (${percent(low)} to ${percent(high)})`,
          },
          ...CAUSES.map((cause) => ({
            key: cause,
            head: causeName(cause),
            numeric: true,
            cell: (row: { proved: Record<(typeof CAUSES)[number], number> }) => grouped(row.proved[cause]),
          })),
        ]}
      />
    </Panel>
  );
}
