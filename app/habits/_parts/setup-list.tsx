import { Table } from '@/app/_look/table';
import { setupPlace } from '@/app/_words/address';
import { dimensionName } from '@/app/_words/dimensions';
import { roundName } from '@/app/_words/jobs';
import { dayAndTime } from '@/app/_words/times';
import { signed, unit } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import type { SetupRow } from '@/lib/access';

interface SetupListProps {
  setups: readonly SetupRow[];
  timeZone: string;
  caption: string;
}

/** One line a setup, with all that was read of it; its label leads to the readings on the job's page. */
export function SetupList({ setups, timeZone, caption }: SetupListProps) {
  const t = words('habits');
  return (
    <Table
      caption={caption}
      rows={setups}
      rowKey={({ job, setup }) => `${job} ${setup}`}
      empty={t('shown.none')}
      columns={[
        {
          key: 'setup',
          head: t('shown.setup'),
          names: true,
          cell: (one) => (
            <a href={setupPlace(one)}>
              {one.job} {one.setup}
            </a>
          ),
        },
        {
          key: 'round',
          head: t('shown.round'),
          whole: true,
          cell: ({ stage, attempt }) => roundName(stage, attempt),
        },
        {
          key: 'hung',
          head: t('shown.hung'),
          whole: true,
          cell: ({ hungAt }) => dayAndTime(hungAt, timeZone),
        },
        { key: 'gauge', head: t('shown.gauge'), cell: ({ gauge }) => gauge },
        {
          key: 'read',
          head: t('shown.read', { unit: unit() }),
          whole: true,
          cell: ({ observations }) =>
            observations.length === 0
              ? t('shown.excluded')
              : observations.map((seen) => `${dimensionName(seen)} ${signed(seen.deviation, 2)}`).join('; '),
        },
      ]}
    />
  );
}
