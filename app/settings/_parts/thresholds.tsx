import { Table } from '@/app/_look/table';
import { sureFrom } from '@/app/_shop/miss-cost';
import { percent } from '@/app/_words/numbers';
import { MISS_COST_RANGE } from '@/lib/access';

const COMMON = [MISS_COST_RANGE.least, 4, 9, 19, 49, MISS_COST_RANGE.most];

/** What some costs mean for the calls, the shop's own among them. */
export function Thresholds({ missCost, usual }: { missCost: number; usual: number }) {
  const costs = [...new Set([...COMMON, missCost])].sort((a, b) => a - b);
  return (
    <Table
      caption="What a cost means"
      rows={costs}
      rowKey={String}
      columns={[
        {
          key: 'cost',
          head: 'Needless re-hangs that one missed damage is worth',
          names: true,
          cell: (cost) => (
            <>
              {cost}
              {cost === missCost && ' (this shop)'}
              {cost === usual && cost !== missCost && ' (usual)'}
            </>
          ),
        },
        {
          key: 'sure',
          head: 'Likely gauge from',
          numeric: true,
          cell: (cost) => percent(sureFrom(cost)),
        },
        {
          key: 'risk',
          head: 'Body at most',
          numeric: true,
          cell: (cost) => percent(1 - sureFrom(cost)),
        },
      ]}
    />
  );
}
