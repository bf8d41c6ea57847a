import type { Metadata } from 'next';
import Link from 'next/link';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { EstimateTable } from '@/app/_figures/estimate-table';
import button from '@/app/_look/button.module.css';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { Note } from '@/app/_look/note';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { FiguresAge } from '@/app/_shop/figures-age';
import { FiguresPending } from '@/app/_shop/figures-pending';
import { NothingYet } from '@/app/_overview/nothing-yet';
import { departuresFrom } from '@/app/_overview/departures';
import { gaugeEstimates } from '@/app/gauges/_parts/estimates';
import { byTechnician } from '@/app/habits/_parts/by-technician';
import { falseAlarmWords } from '@/app/habits/_parts/false-alarms';
import { BeyondChance } from './_parts/beyond-chance';
import { HabitsFound } from './_parts/habits-found';
import styles from './_parts/beyond-chance.module.css';
import { TechnicianFiles } from '@/app/technicians/_parts/technician-files';
import { technicianEstimates } from '@/app/technicians/_parts/estimates';
import { countJobs, everybodysFigures, habitsAnswer } from '@/lib/access';
import { enter } from '@/app/_shop/enter';

export const metadata: Metadata = { title: 'Training' };

export default async function Training() {
  const viewer = await enter();
  const { shop } = viewer;
  const [figures, habits, jobs] = await Promise.all([
    everybodysFigures(viewer),
    habitsAnswer(viewer),
    countJobs(viewer),
  ]);
  if (jobs === 0) return <NothingYet title="Training" />;
  if (figures === null) return <FiguresPending title="Training" />;
  const { technicians, gauges, shop: band } = figures.figures;
  const setting = technicianEstimates(technicians, 'setting');
  const repeatability = technicianEstimates(technicians, 'repeatability');
  const bias = technicianEstimates(technicians, 'bias');
  const byGauge = gaugeEstimates(gauges);
  const apart = departuresFrom(figures.figures);
  return (
    <Page
      title="Training"
      lead="What to practise, with whom, and on what evidence: habits in the readings, and how far gauges are set off."
      actions={
        <>
          <Link className={button.strong} href="/habits">
            Habits and their evidence
          </Link>
          <Link className={button.button} href="/trials" prefetch={false}>
            Repeat trials
          </Link>
        </>
      }
    >
      <FiguresAge fit={figures} timeZone={shop.timeZone} />
      <ExcludedNote viewer={viewer} />
      <Note>
        {apart.length === 0 ? (
          <p>
            No technician’s interval lies apart from the shop’s by enough to matter: on these readings there
            is nothing to single anybody out for.
          </p>
        ) : (
          <>
            <p>Apart from the shop beyond chance, and by enough to matter:</p>
            <ul>
              {apart.map((one) => (
                <li key={`${one.technician} ${one.of}`}>
                  {one.technician}. {one.words}
                </li>
              ))}
            </ul>
          </>
        )}
      </Note>
      <Panel
        id="habits"
        title="Habits found"
        note="In the order of codes. Each opens its evidence, the setups that show it, and how to train it; a repeat trial before and after tells whether the training changed it."
      >
        <HabitsFound hands={byTechnician(habits ?? [])} />
        <DownloadLinks of="habits by technician" csv="/habits/download" picture="/habits/picture" />
        <p className={styles.sentence}>{falseAlarmWords(habits ?? [])}</p>
      </Panel>
      <Panel
        id="setting"
        title="Setting error by technician"
        note="Scatter of one side’s setting when a gauge is set and hung anew; mis-sets are put aside. In the order of codes. The dot is the figure, the stroke its 95 % interval, the band the shop as a whole."
      >
        <BeyondChance estimates={setting} kind="scatter" of="technicians" />
        <EstimateTable
          caption="Scatter of setting (standard deviation), by technician"
          head="Technician"
          kind="sd"
          estimates={setting}
          band={band.setting}
        />
        <TechnicianFiles of="setting" />
      </Panel>
      <Panel
        id="repeatability"
        title="Reading again, by technician"
        note="The floor under every setting error: how far readings scatter with the gauge untouched."
      >
        <BeyondChance estimates={repeatability} kind="scatter" of="technicians" />
        <EstimateTable
          caption="Scatter of reading again (standard deviation), by technician"
          head="Technician"
          kind="sd"
          estimates={repeatability}
          band={band.repeatability}
        />
        <TechnicianFiles of="repeatability" />
      </Panel>
      <Panel
        id="technician-bias"
        title="Bias by technician"
        note="Heights that come out high or low against the mean of all technicians. Reading to another fixed mark, or sighting from above or below, looks like this."
      >
        <BeyondChance estimates={bias} kind="bias" of="technicians" />
        <EstimateTable
          caption="Bias of heights, by technician"
          head="Technician"
          kind="bias"
          estimates={bias}
        />
        <TechnicianFiles of="bias" />
      </Panel>
      <Panel
        id="gauge-bias"
        title="Bias by gauge"
        note="The same by gauge, technicians set aside. A gauge whose interval leaves zero out wants verifying against a reference length."
      >
        <BeyondChance estimates={byGauge} kind="bias" of="gauges" />
        <EstimateTable caption="Bias of heights, by gauge" head="Gauge" kind="bias" estimates={byGauge} />
        <DownloadLinks of="bias by gauge" csv="/figures/gauges/download" picture="/figures/gauges/picture" />
      </Panel>
    </Page>
  );
}
