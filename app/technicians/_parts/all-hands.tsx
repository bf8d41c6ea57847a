import Link from 'next/link';
import { EstimateTable } from '@/app/_figures/estimate-table';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { RateGroups } from '@/app/_figures/rate-groups';
import { Panel } from '@/app/_look/panel';
import { drawnOnce } from '@/app/_look/still';
import { rateOf } from '@/app/_shop/rate-of';
import { technicianAddress } from '@/app/_words/address';
import { inOrder } from '@/app/_words/in-order';
import { words } from '@/app/_words/words';
import type { OutcomeCount, ShopFigures } from '@/lib/access';
import { technicianEstimates } from './estimates';
import { TechnicianFiles } from './technician-files';

const ESTIMATED = [
  ['repeatability', 'sd'],
  ['setting', 'sd'],
  ['bias', 'bias'],
] as const;

/** How each hand reads and sets, in tables of their own. */
export const EstimatesOfAll = drawnOnce(function EstimatesOfAll({ figures }: { figures: ShopFigures }) {
  const t = words('technicians');
  const { technicians, shop: band } = figures;
  return (
    <>
      {ESTIMATED.map(([of, kind]) => (
        <Panel key={of} id={of} title={t(`${of}.title`)} note={t(`${of}.note`)}>
          <EstimateTable
            caption={t(`${of}.caption`)}
            head={t('technician')}
            kind={kind}
            estimates={technicianEstimates(technicians, of)}
            band={of === 'bias' ? undefined : band[of]}
          />
          <TechnicianFiles of={of} />
        </Panel>
      ))}
    </>
  );
});

interface RatesOfAllProps {
  rates: readonly OutcomeCount[];
  /** The shop's count, in one row. */
  whole: readonly OutcomeCount[];
}

/** Right first time by technician. */
export const RatesOfAll = drawnOnce(function RatesOfAll({ rates, whole }: RatesOfAllProps) {
  const t = words('technicians');
  return (
    <Panel id="rates" title={t('rates.title')} note={t('rates.note')}>
      <RateGroups
        caption={t('rates.caption')}
        head={t('technician')}
        shop={rateOf(whole[0]?.right ?? 0, whole[0]?.jobs ?? 0)}
        groups={[...rates]
          .sort((a, b) => inOrder(a.key, b.key))
          .map(({ key, right, jobs }) => ({
            key,
            name: <Link href={technicianAddress(key)}>{key}</Link>,
            rate: rateOf(right, jobs),
          }))}
      />
      <DownloadLinks
        of={t('rates.download')}
        csv="/rates/download?by=technician"
        picture="/rates/picture?by=technician"
      />
    </Panel>
  );
});
