import { drawnOnce } from '@/app/_look/still';
import Link from 'next/link';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { Tag } from '@/app/_look/tag';
import { sureFrom } from '@/app/_shop/miss-cost';
import { grouped, percent } from '@/app/_words/numbers';
import { CALL_GLYPHS, callName, causeName } from '@/app/_words/verdicts';
import { CAUSES } from '@/lib/measure';
import type { calledBy } from './proofs';
import { words } from '@/app/_words/words';

interface CalledPanelProps {
  called: ReturnType<typeof calledBy>;
  missCost: number;
  /** Whether the reader may set it. */
  sets: boolean;
}

/** Every call at the shop's present threshold, and what the heights proved to be. */
export const CalledPanel = drawnOnce(function CalledPanel({ called, missCost, sets }: CalledPanelProps) {
  const t = words('calibration');
  return (
    <Panel
      id="calls"
      title={t('called.title')}
      note={
        <>
          {t('called.note', { sure: percent(sureFrom(missCost)), cost: missCost })}
          {sets && ' '}
          {sets && <Link href="/settings">{t('called.set')}</Link>}
        </>
      }
    >
      <Table
        caption={t('called.caption')}
        rows={called}
        rowKey={({ call }) => call}
        columns={[
          {
            key: 'call',
            head: t('called.call'),
            names: true,
            cell: ({ call }) => <Tag name={CALL_GLYPHS[call]}>{callName(call)}</Tag>,
          },
          { key: 'heights', head: t('heights'), numeric: true, cell: (row) => grouped(row.heights) },
          {
            key: 'damage',
            head: t('called.body'),
            numeric: true,
            cell: ({ body: { share, low, high } }) =>
              share === null || low === null || high === null
                ? t('none')
                : t('called.share', { share: percent(share), low: percent(low), high: percent(high) }),
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
});
