import Link from 'next/link';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { enter } from '@/app/_shop/enter';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { FiguresAge } from '@/app/_shop/figures-age';
import { FiguresPending } from '@/app/_shop/figures-pending';
import { address, type Query } from '@/app/_words/address';
import { brief } from '@/app/_words/numbers';
import { day } from '@/app/_words/times';
import { titled } from '@/app/_words/titled';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import { everybodysFigures, whatIfAnswer } from '@/lib/access';
import { MEASURES, USUAL_MINUTES } from '@/lib/assess/what-if';
import { askedScenarios } from './_parts/asked-scenarios';
import { ChangePicture } from './_parts/change-picture';
import { GaugeForm } from './_parts/gauge-form';
import { measureMeaning, measureName } from './_parts/measures';
import { ChangeTable, ScenarioTable } from './_parts/scenario-tables';
import styles from './_parts/scenario-tables.module.css';

export const generateMetadata = titled(() => words('whatIf')('title'));

export default async function WhatIfPage({ searchParams }: { searchParams: Promise<Query> }) {
  const viewer = await enter();
  const t = words('whatIf');
  const [stored, figures] = await Promise.all([whatIfAnswer(viewer), everybodysFigures(viewer)]);
  if (stored === null) return <FiguresPending title={t('title')} />;
  const { answer, rests } = stored;
  const why = stored.why ?? answer?.why ?? null;
  const { rows, without, note } = askedScenarios(stored, await searchParams);
  const { timeZone } = viewer.shop;
  return (
    <Page above={<Link href="/rates">{t('above')}</Link>} title={t('title')} lead={t('lead')}>
      <FiguresAge fit={figures} timeZone={timeZone} />
      <ExcludedNote viewer={viewer} />
      {rows.length === 0 ? (
        <Note>
          <p>{why === null ? t('nothing') : told(why)}</p>
        </Note>
      ) : (
        <>
          <Panel id="change" title={t('change.title')} note={t('change.note')}>
            {note !== null && (
              <Note>
                <p>{note}</p>
              </Note>
            )}
            <GaugeForm stored={stored} without={without} />
            <ChangePicture rows={rows} />
            <ChangeTable rows={rows} />
            <p>{t('change.words')}</p>
            <DownloadLinks
              of={t('change.download')}
              csv="/what-if/download"
              picture={address('/what-if/picture', { without: without ?? undefined })}
            />
          </Panel>
          <Panel id="scenarios" title={t('scenarios.title')}>
            <ScenarioTable rows={rows} />
            <dl className={styles.meanings}>
              {MEASURES.map((measure) => (
                <div key={measure}>
                  <dt>{measureName(measure)}</dt>
                  <dd>{measureMeaning(measure)}</dd>
                </div>
              ))}
            </dl>
          </Panel>
          <Panel id="method" title={t('method.title')}>
            {answer !== null && <p>{told(answer.method)}</p>}
            <p>
              {t('method.minutes', {
                hang: brief(USUAL_MINUTES.hang),
                rehang: brief(USUAL_MINUTES.rehang),
                reading: brief(USUAL_MINUTES.reading),
                redo: brief(USUAL_MINUTES.redo),
              })}
            </p>
            {rests !== null && (
              <p>
                {t.rich('method.rests', {
                  from: day(rests.from, timeZone),
                  to: day(rests.to, timeZone),
                  signals: (chunks) => <Link href="/rates/signals">{chunks}</Link>,
                  technicians: (chunks) => <Link href="/technicians">{chunks}</Link>,
                  gauges: (chunks) => <Link href="/gauges">{chunks}</Link>,
                })}
              </p>
            )}
          </Panel>
        </>
      )}
    </Page>
  );
}
