import { DownloadLinks } from '@/app/_figures/download/download-links';
import { EstimateTable } from '@/app/_figures/estimate-table';
import { Panel } from '@/app/_look/panel';
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
export function BesideShop({ own, band, picture }: BesideShopProps) {
  return (
    <Panel
      id="hand"
      title="This hand beside the shop"
      note="The shop as a whole stands under each figure. Where the two intervals overlap, the difference may be chance."
    >
      <EstimateTable
        caption="Scatter, standard deviations"
        head="What"
        kind="sd"
        estimates={[
          { key: 'repeatability', name: 'Reading again', ...estimateOf(own, 'repeatability') },
          shopRow('The shop, reading again', band.repeatability),
          { key: 'setting', name: 'Setting again', ...estimateOf(own, 'setting') },
          shopRow('The shop, setting again', band.setting),
        ]}
      />
      <DownloadLinks of="this hand beside the shop" picture={picture} />
      <EstimateTable
        caption="Bias of heights against the mean of all technicians"
        head="What"
        kind="bias"
        estimates={[{ key: 'bias', name: 'Bias', ...estimateOf(own, 'bias') }]}
      />
    </Panel>
  );
}

const shopRow = (name: string, { sd, low, high, why }: SdEstimate) => ({
  ...{ key: name, name, value: sd, low, high, why },
  rests: 'all technicians',
});
