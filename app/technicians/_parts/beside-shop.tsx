import { drawnOnce } from '@/app/_look/still';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { EstimateTable } from '@/app/_figures/estimate-table';
import { Panel } from '@/app/_look/panel';
import { whyTold } from '@/app/_words/why';
import { words } from '@/app/_words/words';
import type { SdEstimate, TechnicianFigures } from '@/lib/assess';
import type { ShopFigures } from '@/lib/access';
import { estimateOf } from './estimates';

interface BesideShopProps {
  own: TechnicianFigures;
  band: ShopFigures['shop'];
  /** Where the scatter is had as a picture. */
  picture: string;
}

/** Reading again, setting again and bias, the shop as a whole under each. */
export const BesideShop = drawnOnce(function BesideShop({ own, band, picture }: BesideShopProps) {
  const t = words('hand');
  return (
    <Panel id="hand" title={t('beside.title')} note={t('beside.note')}>
      <EstimateTable
        caption={t('beside.scatter')}
        head={t('what')}
        kind="sd"
        estimates={[
          { key: 'repeatability', name: t('rows.reading'), ...estimateOf(own, 'repeatability') },
          shopRow(t('rows.shopReading'), band.repeatability),
          { key: 'setting', name: t('rows.setting'), ...estimateOf(own, 'setting') },
          shopRow(t('rows.shopSetting'), band.setting),
        ]}
      />
      <DownloadLinks of={t('beside.download')} picture={picture} />
      <EstimateTable
        caption={t('beside.bias')}
        head={t('what')}
        kind="bias"
        estimates={[{ key: 'bias', name: t('rows.bias'), ...estimateOf(own, 'bias') }]}
      />
    </Panel>
  );
});

const shopRow = (name: string, { sd, low, high, why }: SdEstimate) => ({
  key: name,
  name,
  value: sd,
  low,
  high,
  why: whyTold(why),
  rests: words('hand')('rests.everybody'),
});
