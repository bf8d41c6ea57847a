import { Table } from '@/app/_look/table';
import { words } from '@/app/_words/words';
import type { TrialView } from '@/lib/access';

/** How far everybody is, in the order of the plan. */
export function Progress({ trial }: { trial: TrialView }) {
  const t = words('trials');
  const rows = trial.plan.people.map((person) => {
    const runs = trial.runs.filter((line) => line.person === person);
    const orders = new Set(runs.map(({ order }) => order));
    const filled = trial.filled.filter(({ run }) => orders.has(run)).length;
    const next = runs.find(
      ({ order }) => trial.filled.filter(({ run }) => run === order).length < trial.plan.readings,
    );
    return { person, filled, of: runs.length * trial.plan.readings, next };
  });
  return (
    <Table
      caption={t('progress.caption')}
      rows={rows}
      rowKey={({ person }) => person}
      columns={[
        { key: 'person', head: t('technician'), names: true, cell: ({ person }) => person },
        {
          key: 'in',
          head: t('progress.in'),
          numeric: true,
          cell: ({ filled, of }) => t('of', { n: filled, all: of }),
        },
        {
          key: 'next',
          head: t('progress.next'),
          cell: ({ next }) =>
            next === undefined
              ? t('progress.done')
              : t('progress.run', { run: String(next.order), point: next.point }),
        },
      ]}
    />
  );
}
