import Link from 'next/link';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { EstimateTable } from '@/app/_figures/estimate-table';
import { RateGroups } from '@/app/_figures/rate-groups';
import { Empty } from '@/app/_look/empty';
import { FiguresPending } from '@/app/_shop/figures-pending';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { rateOf } from '@/app/_shop/rate-of';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { FiguresAge } from '@/app/_shop/figures-age';
import { technicianAddress } from '@/app/_words/address';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
import { technicianEstimates } from '../_parts/estimates';
import { TechnicianFiles } from '../_parts/technician-files';
import { countOutcomes, everybodysFigures, listPeople } from '@/lib/access';
import { enter } from '@/app/_shop/enter';

export const generateMetadata = titled(() => words('technicians')('title'));

export default async function Technicians() {
  const viewer = await enter();
  const t = words('technicians');
  const { shop } = viewer;
  const [people, figures, rates, whole] = await Promise.all([
    listPeople(viewer),
    everybodysFigures(viewer),
    countOutcomes(viewer, 'technician'),
    countOutcomes(viewer, 'shop'),
  ]);
  if (people.length === 0) {
    return (
      <Page title={t('title')}>
        <Empty title={t('none.title')} action={<Link href="/load">{t('none.load')}</Link>}>
          <p>{t('none.text')}</p>
        </Empty>
      </Page>
    );
  }
  if (figures === null) return <FiguresPending title={t('title')} />;
  const { technicians, shop: band } = figures.figures;
  return (
    <Page title={t('title')} lead={t('lead')}>
      <FiguresAge fit={figures} timeZone={shop.timeZone} />
      <ExcludedNote viewer={viewer} />
      <Panel id="repeatability" title={t('repeatability.title')} note={t('repeatability.note')}>
        <EstimateTable
          caption={t('repeatability.caption')}
          head={t('technician')}
          kind="sd"
          estimates={technicianEstimates(technicians, 'repeatability')}
          band={band.repeatability}
        />
        <TechnicianFiles of="repeatability" />
      </Panel>
      <Panel id="setting" title={t('setting.title')} note={t('setting.note')}>
        <EstimateTable
          caption={t('setting.caption')}
          head={t('technician')}
          kind="sd"
          estimates={technicianEstimates(technicians, 'setting')}
          band={band.setting}
        />
        <TechnicianFiles of="setting" />
      </Panel>
      <Panel id="bias" title={t('bias.title')} note={t('bias.note')}>
        <EstimateTable
          caption={t('bias.caption')}
          head={t('technician')}
          kind="bias"
          estimates={technicianEstimates(technicians, 'bias')}
        />
        <TechnicianFiles of="bias" />
      </Panel>
      <Panel id="rates" title={t('rates.title')} note={t('rates.note')}>
        <RateGroups
          caption={t('rates.caption')}
          head={t('technician')}
          shop={rateOf(whole[0]?.right ?? 0, whole[0]?.jobs ?? 0)}
          groups={[...rates]
            .sort((a, b) => a.key.localeCompare(b.key, 'en', { numeric: true }))
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
    </Page>
  );
}
