import { Table } from '@/app/_look/table';
import { setupPlace } from '@/app/_words/address';
import { dimensionName } from '@/app/_words/dimensions';
import { roundName } from '@/app/_words/jobs';
import { dayAndTime } from '@/app/_words/times';
import { signed } from '@/app/_words/numbers';
import type { SetupRow } from '@/lib/access';

interface SetupListProps {
  setups: readonly SetupRow[];
  timeZone: string;
  caption: string;
}

/** One line a setup, with all that was read of it; its label leads to the readings on the job's page. */
export function SetupList({ setups, timeZone, caption }: SetupListProps) {
  return (
    <Table
      caption={caption}
      rows={setups}
      rowKey={({ job, setup }) => `${job} ${setup}`}
      empty="None of these setups is on record any more."
      columns={[
        {
          key: 'setup',
          head: 'Job and setup',
          names: true,
          cell: (one) => (
            <a href={setupPlace(one)}>
              {one.job} {one.setup}
            </a>
          ),
        },
        { key: 'round', head: 'Round', whole: true, cell: ({ stage, attempt }) => roundName(stage, attempt) },
        { key: 'hung', head: 'Hung', whole: true, cell: ({ hungAt }) => dayAndTime(hungAt, timeZone) },
        { key: 'gauge', head: 'Gauge', cell: ({ gauge }) => gauge },
        {
          key: 'read',
          head: 'Deviations read, mm',
          whole: true,
          cell: ({ observations }) =>
            observations.length === 0
              ? 'all excluded'
              : observations.map((seen) => `${dimensionName(seen)} ${signed(seen.deviation, 2)}`).join('; '),
        },
      ]}
    />
  );
}
