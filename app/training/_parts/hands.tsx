import { DownloadLinks } from '@/app/_figures/download/download-links';
import { EstimateTable } from '@/app/_figures/estimate-table';
import { Note } from '@/app/_look/note';
import { Panel } from '@/app/_look/panel';
import { drawnOnce } from '@/app/_look/still';
import { departuresFrom } from '@/app/_overview/departures';
import { words } from '@/app/_words/words';
import { gaugeEstimates } from '@/app/gauges/_parts/estimates';
import { byTechnician } from '@/app/habits/_parts/by-technician';
import { falseAlarmWords } from '@/app/habits/_parts/false-alarms';
import { technicianEstimates } from '@/app/technicians/_parts/estimates';
import { TechnicianFiles } from '@/app/technicians/_parts/technician-files';
import type { ShopFigures } from '@/lib/access';
import type { HabitsAnswer } from '@/lib/assess/answers';
import { BeyondChance } from './beyond-chance';
import styles from './beyond-chance.module.css';
import { HabitsFound } from './habits-found';

interface HandsProps {
  figures: ShopFigures;
  habits: HabitsAnswer | null;
}

/** Where hands and gauges lie apart, and what each hand does that the others do not. */
export const Hands = drawnOnce(function Hands({ figures, habits }: HandsProps) {
  const t = words('training');
  const { technicians, gauges, shop: band } = figures;
  const setting = technicianEstimates(technicians, 'setting');
  const repeatability = technicianEstimates(technicians, 'repeatability');
  const bias = technicianEstimates(technicians, 'bias');
  const byGauge = gaugeEstimates(gauges);
  const apart = departuresFrom(figures);
  return (
    <>
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
    </>
  );
});
