import type { Metadata } from 'next';
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
import { technicianEstimates } from '../_parts/estimates';
import { TechnicianFiles } from '../_parts/technician-files';
import { countOutcomes, everybodysFigures, listPeople } from '@/lib/access';
import { enter } from '@/app/_shop/enter';

export const metadata: Metadata = { title: 'Technicians' };

export default async function Technicians() {
  const viewer = await enter();
  const { shop } = viewer;
  const [people, figures, rates, whole] = await Promise.all([
    listPeople(viewer),
    everybodysFigures(viewer),
    countOutcomes(viewer, 'technician'),
    countOutcomes(viewer, 'shop'),
  ]);
  if (people.length === 0) {
    return (
      <Page title="Technicians">
        <Empty
          title="No technician has measured yet"
          action={<Link href="/load">Load a measurement file</Link>}
        >
          <p>Technicians appear with the first file that names them.</p>
        </Empty>
      </Page>
    );
  }
  if (figures === null) return <FiguresPending title="Technicians" />;
  const { technicians, shop: band } = figures.figures;
  return (
    <Page
      title="Technicians"
      lead="In the order of their codes: the intervals say what is known, and where they overlap nobody is ahead of anybody."
    >
      <FiguresAge fit={figures} timeZone={shop.timeZone} />
      <ExcludedNote viewer={viewer} />
      <Panel
        id="repeatability"
        title="Repeatability"
        note="How far readings scatter when the same gauge is read again without touching it. The band is the shop as a whole."
      >
        <EstimateTable
          caption="Scatter of reading again (standard deviation)"
          head="Technician"
          kind="sd"
          estimates={technicianEstimates(technicians, 'repeatability')}
          band={band.repeatability}
        />
        <TechnicianFiles of="repeatability" />
      </Panel>
      <Panel
        id="setting"
        title="Setting"
        note="How far one side of a gauge is off when it is set and hung anew, mis-sets put aside. The band is the shop as a whole."
      >
        <EstimateTable
          caption="Scatter of setting (standard deviation)"
          head="Technician"
          kind="sd"
          estimates={technicianEstimates(technicians, 'setting')}
          band={band.setting}
        />
        <TechnicianFiles of="setting" />
      </Panel>
      <Panel
        id="bias"
        title="Bias"
        note="Whether heights come out high or low, against the mean of all technicians."
      >
        <EstimateTable
          caption="Bias of heights"
          head="Technician"
          kind="bias"
          estimates={technicianEstimates(technicians, 'bias')}
        />
        <TechnicianFiles of="bias" />
      </Panel>
      <Panel
        id="rates"
        title="Right first time"
        note="Counted to the technician who measured the first round after repair. The band is the shop’s interval."
      >
        <RateGroups
          caption="Right first time by technician"
          head="Technician"
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
          of="right first time by technician"
          csv="/rates/download?by=technician"
          picture="/rates/picture?by=technician"
        />
      </Panel>
    </Page>
  );
}
