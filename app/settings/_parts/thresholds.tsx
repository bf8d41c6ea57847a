import { Table } from '@/app/_look/table';
import { sureFrom } from '@/app/_shop/miss-cost';
import { percent } from '@/app/_words/numbers';
import { MISS_COST_RANGE } from '@/lib/access';
import { words } from '@/app/_words/words';

const COMMON = [MISS_COST_RANGE.least, 4, 9, 19, 49, MISS_COST_RANGE.most];

/** What some costs mean for the calls, the shop's own among them. */
export function Thresholds({ missCost, usual }: { missCost: number; usual: number }) {
  const costs = [...new Set([...COMMON, missCost])].sort((a, b) => a - b);
  const t = words('settings');
  return (
    <Table
      caption={t('thresholds.caption')}
      rows={costs}
      rowKey={String}
      columns={[
        {
          key: 'cost',
          head: t('thresholds.cost'),
          names: true,
          cell: (cost) =>
            t(`thresholds.${cost === missCost ? 'thisShop' : cost === usual ? 'usual' : 'other'}`, { cost }),
        },
        {
          key: 'sure',
          head: t('thresholds.sure'),
          numeric: true,
          cell: (cost) => percent(sureFrom(cost)),
        },
        {
          key: 'risk',
          head: t('thresholds.risk'),
          numeric: true,
          cell: (cost) => percent(1 - sureFrom(cost)),
        },
      ]}
    />
  );
}
