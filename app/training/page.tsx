import type { Metadata } from 'next';
import { EstimateTable } from '@/app/_figures/estimate-table';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { Note } from '@/app/_look/note';
import { currentFigures } from '@/lib/refresh';
import { FiguresAge } from '@/app/_shop/figures-age';
import { FiguresPending } from '@/app/_shop/figures-pending';
import { NothingYet } from '@/app/_overview/nothing-yet';
import { departuresFrom } from '@/app/_overview/departures';
import { gaugeEstimates } from '@/app/gauges/_parts/estimates';
import { technicianEstimates } from '@/app/technicians/_parts/estimates';
import { countJobs, getShop } from '@/lib/store';

export const metadata: Metadata = { title: 'Training' };

export default async function Training() {
  const shop = await getShop();
  const [figures, jobs] = await Promise.all([currentFigures(shop.id), countJobs(shop.id)]);
  if (jobs === 0) return <NothingYet shop={shop.name} />;
  if (figures === null) return <FiguresPending title="Training" />;
  const { technicians, gauges, shop: band } = figures.figures;
  const apart = departuresFrom(figures.figures);
  return (
    <Page
      title="Training"
      lead="Setting error across technicians and gauges: who has a habit worth practising, and on what evidence."
    >
      <FiguresAge fit={figures} timeZone={shop.timeZone} />
      <Note>
        {apart.length === 0 ? (
          <p>
            No technician’s interval lies apart from the shop’s: on these readings there is nothing to single
            anybody out for.
          </p>
        ) : (
          <ul>
            {apart.map((one) => (
              <li key={`${one.technician} ${one.of}`}>
                {one.technician}. {one.words}
              </li>
            ))}
          </ul>
        )}
      </Note>
      <Panel
        id="setting"
        title="Setting error by technician"
        note="Scatter of one side’s setting when a gauge is set and hung anew; mis-sets are put aside. Ordered by code. The band is the shop as a whole."
      >
        <EstimateTable
          caption="Standard deviation of setting, by technician"
          head="Technician"
          kind="sd"
          estimates={technicianEstimates(technicians, 'setting')}
          band={band.setting}
        />
      </Panel>
      <Panel
        id="repeatability"
        title="Reading again, by technician"
        note="The floor under every setting error: how far readings scatter with the gauge untouched."
      >
        <EstimateTable
          caption="Standard deviation of reading again, by technician"
          head="Technician"
          kind="sd"
          estimates={technicianEstimates(technicians, 'repeatability')}
          band={band.repeatability}
        />
      </Panel>
      <Panel
        id="technician-bias"
        title="Bias by technician"
        note="Heights that come out high or low against the mean of all technicians. Another fixed mark, or a habit of sighting, looks like this."
      >
        <EstimateTable
          caption="Bias of heights, by technician"
          head="Technician"
          kind="bias"
          estimates={technicianEstimates(technicians, 'bias')}
        />
      </Panel>
      <Panel
        id="gauge-bias"
        title="Bias by gauge"
        note="The same by gauge, technicians set aside. A gauge whose interval leaves zero out wants verifying against a reference length."
      >
        <EstimateTable
          caption="Bias of heights, by gauge"
          head="Gauge"
          kind="bias"
          estimates={gaugeEstimates(gauges)}
        />
      </Panel>
    </Page>
  );
}
