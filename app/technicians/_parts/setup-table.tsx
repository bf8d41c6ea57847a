import { drawnOnce } from '@/app/_look/still';
import Link from 'next/link';
import { Table } from '@/app/_look/table';
import { HandLink, type Hands } from '@/app/_shop/hand-link';
import { gaugeAddress, setupPlace } from '@/app/_words/address';
import { dimensionName } from '@/app/_words/dimensions';
import { roundName } from '@/app/_words/jobs';
import { bareMillimetres, signed, unit } from '@/app/_words/numbers';
import { dayAndTime } from '@/app/_words/times';
import { words } from '@/app/_words/words';
import type { SetupRow } from '@/lib/access';

interface SetupTableProps {
  setups: readonly SetupRow[];
  timeZone: string;
  caption: string;
  /** The column that says with what, or by whom. */
  show: 'gauge' | 'technician';
  hands: Hands;
}

/** One line a dimension of a setup; its label leads to the readings on the job's page. */
export const SetupTable = drawnOnce(function SetupTable({
  setups,
  timeZone,
  caption,
  show,
  hands,
}: SetupTableProps) {
  const t = words('hand');
  const rows = setups.flatMap((setup) =>
    setup.observations.map((seen) => ({
      ...seen,
      setup,
      key: `${setup.job} ${setup.setup} ${seen.quantity} ${seen.point} ${seen.side ?? ''}`,
    })),
  );
  return (
    <Table
      caption={caption}
      rows={rows}
      rowKey={(row) => row.key}
      columns={[
        {
          key: 'setup',
          head: t('setups.setup'),
          names: true,
          cell: ({ setup }) => (
            <a href={setupPlace(setup)}>
              {setup.job} {setup.setup}
            </a>
          ),
        },
        {
          key: 'round',
          head: t('setups.round'),
          whole: true,
          cell: ({ setup }) => roundName(setup.stage, setup.attempt),
        },
        {
          key: 'time',
          head: t('setups.hung'),
          whole: true,
          cell: ({ setup }) => dayAndTime(setup.hungAt, timeZone),
        },
        show === 'gauge'
          ? {
              key: 'gauge',
              head: t('setups.gauge'),
              cell: ({ setup }) => (
                <Link href={gaugeAddress(setup.gauge)} prefetch={false}>
                  {setup.gauge}
                </Link>
              ),
            }
          : {
              key: 'technician',
              head: t('setups.technician'),
              cell: ({ setup }) => <HandLink code={setup.technician} hands={hands} />,
            },
        {
          key: 'dimension',
          head: t('setups.dimension'),
          whole: true,
          cell: dimensionName,
        },
        { key: 'n', head: t('setups.readings'), numeric: true, cell: (row) => row.n },
        {
          key: 'deviation',
          head: t('setups.deviation', { unit: unit() }),
          numeric: true,
          cell: (row) => signed(row.deviation, 2),
        },
        {
          key: 'spread',
          head: t('setups.spread', { unit: unit() }),
          numeric: true,
          cell: (row) => (row.n < 2 ? t('setups.once') : bareMillimetres(Math.sqrt(row.ss / (row.n - 1)), 2)),
        },
      ]}
    />
  );
});
