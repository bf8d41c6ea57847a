import { Table } from '@/app/_look/table';
import type { TrialView } from '@/lib/access';

/** How far everybody is, in the order of the plan. */
export function Progress({ trial }: { trial: TrialView }) {
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
      caption="Readings that are in, by technician"
      rows={rows}
      rowKey={({ person }) => person}
      columns={[
        { key: 'person', head: 'Technician', names: true, cell: ({ person }) => person },
        { key: 'in', head: 'In', numeric: true, cell: ({ filled, of }) => `${filled} of ${of}` },
        {
          key: 'next',
          head: 'Next',
          cell: ({ next }) => (next === undefined ? 'done' : `run ${next.order}, point ${next.point}`),
        },
      ]}
    />
  );
}
