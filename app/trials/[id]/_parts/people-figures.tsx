import { EstimateTable, type Estimate } from '@/app/_figures/estimate-table';
import { count } from '@/app/_words/numbers';
import type { PersonInTrial } from '@/lib/access';

/** Bias and scatter of everybody, in the order of their codes. */
export function PeopleFigures({ people }: { people: PersonInTrial[] }) {
  const of = (which: 'bias' | 'reading' | 'hanging'): Estimate[] =>
    people.map((one) => ({
      ...{ key: one.person, name: one.person, ...one[which] },
      rests: count(one.hangings, 'hanging'),
    }));
  return (
    <>
      <EstimateTable
        caption="Bias against the mean of all who took part, at these points"
        head="Technician"
        kind="bias"
        estimates={of('bias')}
      />
      <EstimateTable
        caption="Scatter of reading again"
        head="Technician"
        kind="sd"
        estimates={of('reading')}
      />
      <EstimateTable
        caption="Scatter of hanging and reading at the same point (mean of a hanging)"
        head="Technician"
        kind="sd"
        estimates={of('hanging')}
      />
    </>
  );
}
