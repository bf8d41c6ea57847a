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
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';

export const generateMetadata = titled(() => words('training')('title'));

export default async function Training() {
  const viewer = await enter();
  const { shop } = viewer;
  const t = words('training');
  const [figures, habits, jobs] = await Promise.all([
    everybodysFigures(viewer),
    habitsAnswer(viewer),
    countJobs(viewer),
  ]);
  if (jobs === 0) return <NothingYet title={t('title')} />;
  if (figures === null) return <FiguresPending title={t('title')} />;
  const { technicians, gauges, shop: band } = figures.figures;
  const setting = technicianEstimates(technicians, 'setting');
  const repeatability = technicianEstimates(technicians, 'repeatability');
  const bias = technicianEstimates(technicians, 'bias');
  const byGauge = gaugeEstimates(gauges);
  const apart = departuresFrom(figures.figures);
  return (
    <Page
      title={t('title')}
      lead={t('lead')}
      actions={
        <>
          <Link className={button.strong} href="/habits">
            {t('habitsLink')}
          </Link>
          <Link className={button.button} href="/trials" prefetch={false}>
            {t('trialsLink')}
          </Link>
        </>
      }
    >
      <FiguresAge fit={figures} timeZone={shop.timeZone} />
      <ExcludedNote viewer={viewer} />
      <Note>
        {apart.length === 0 ? (
          <p>{t('noneApart')}</p>
        ) : (
          <>
            <p>{t('apart')}</p>
            <ul>
              {apart.map((one) => (
                <li key={`${one.technician} ${one.of}`}>
                  {t('apartOne', { technician: one.technician, words: one.words })}
                </li>
              ))}
            </ul>
          </>
        )}
      </Note>
      <Panel id="habits" title={t('habits.title')} note={t('habits.note')}>
        <HabitsFound hands={byTechnician(habits ?? [])} />
        <DownloadLinks of={t('habits.download')} csv="/habits/download" picture="/habits/picture" />
        <p className={styles.sentence}>{falseAlarmWords(habits ?? [])}</p>
      </Panel>
      <Panel id="setting" title={t('setting.title')} note={t('setting.note')}>
        <BeyondChance estimates={setting} kind="scatter" of="technicians" />
        <EstimateTable
          caption={t('setting.caption')}
          head={t('technician')}
          kind="sd"
          estimates={setting}
          band={band.setting}
        />
        <TechnicianFiles of="setting" />
      </Panel>
      <Panel id="repeatability" title={t('repeatability.title')} note={t('repeatability.note')}>
        <BeyondChance estimates={repeatability} kind="scatter" of="technicians" />
        <EstimateTable
          caption={t('repeatability.caption')}
          head={t('technician')}
          kind="sd"
          estimates={repeatability}
          band={band.repeatability}
        />
        <TechnicianFiles of="repeatability" />
      </Panel>
      <Panel id="technician-bias" title={t('bias.title')} note={t('bias.note')}>
        <BeyondChance estimates={bias} kind="bias" of="technicians" />
        <EstimateTable caption={t('bias.caption')} head={t('technician')} kind="bias" estimates={bias} />
        <TechnicianFiles of="bias" />
      </Panel>
      <Panel id="gauge-bias" title={t('gaugeBias.title')} note={t('gaugeBias.note')}>
        <BeyondChance estimates={byGauge} kind="bias" of="gauges" />
        <EstimateTable caption={t('gaugeBias.caption')} head={t('gauge')} kind="bias" estimates={byGauge} />
        <DownloadLinks
          of={t('gaugeBias.download')}
          csv="/figures/gauges/download"
          picture="/figures/gauges/picture"
        />
      </Panel>
    </Page>
  );
}
