import { EstimateTable, type Estimate } from '@/app/_figures/estimate-table';
import { whyTold } from '@/app/_words/why';
import { words } from '@/app/_words/words';
import type { PersonInTrial } from '@/lib/access';

/** Bias and scatter of everybody, in the order of their codes. */
export function PeopleFigures({ people }: { people: PersonInTrial[] }) {
  const t = words('trials');
  const of = (which: 'bias' | 'reading' | 'hanging'): Estimate[] =>
    people.map((one) => ({
      key: one.person,
      name: one.person,
      ...one[which],
      why: whyTold(one[which].why),
      rests: t('hangings', { n: one.hangings }),
    }));
  return (
    <>
      <EstimateTable caption={t('people.bias')} head={t('technician')} kind="bias" estimates={of('bias')} />
      <EstimateTable
        caption={t('people.reading')}
        head={t('technician')}
        kind="sd"
        estimates={of('reading')}
      />
      <EstimateTable
        caption={t('people.hanging')}
        head={t('technician')}
        kind="sd"
        estimates={of('hanging')}
      />
    </>
  );
}
