import type { Metadata } from 'next';
import Link from 'next/link';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { StillDrawing } from '@/app/_figures/drawing/still-drawing';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { enter } from '@/app/_shop/enter';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { FiguresAge } from '@/app/_shop/figures-age';
import { FiguresPending } from '@/app/_shop/figures-pending';
import { address, type Query } from '@/app/_words/address';
import { day } from '@/app/_words/times';
import { everybodysFigures, whatIfAnswer } from '@/lib/access';
import { MEASURES, USUAL_MINUTES } from '@/lib/assess/what-if';
import { askedScenarios } from './_parts/asked-scenarios';
import { changeDrawing } from './_parts/change-drawing';
import { GaugeForm } from './_parts/gauge-form';
import { MEASURE_MEANINGS, MEASURE_NAMES } from './_parts/measures';
import { ChangeTable, ScenarioTable } from './_parts/scenario-tables';
import styles from './_parts/scenario-tables.module.css';

export const metadata: Metadata = { title: 'What if' };

const TITLE = 'What if';

export default async function WhatIfPage({ searchParams }: { searchParams: Promise<Query> }) {
  const viewer = await enter();
  const [stored, figures] = await Promise.all([whatIfAnswer(viewer), everybodysFigures(viewer)]);
  if (stored === null) return <FiguresPending title={TITLE} />;
  const { answer, rests } = stored;
  const why = stored.why ?? answer?.why ?? null;
  const { rows, without, note } = askedScenarios(stored, await searchParams);
  const { timeZone } = viewer.shop;
  return (
    <Page
      above={<Link href="/rates">Right first time</Link>}
      title={TITLE}
      lead="What other rules would change in this shop: false alarms, missed damage, re-dos and time per 100 jobs, worked out of its own scatter, mis-sets and repairs."
    >
      <FiguresAge fit={figures} timeZone={timeZone} />
      <ExcludedNote viewer={viewer} />
      {rows.length === 0 ? (
        <Note>
          <p>{why ?? 'There is nothing to set side by side yet.'}</p>
        </Note>
      ) : (
        <>
          <Panel
            id="change"
            title="Against as now"
            note="A dot is the expected change, the stroke its 95 % interval, the dashed line no change. To the left is less."
          >
            {note !== null && (
              <Note>
                <p>{note}</p>
              </Note>
            )}
            <GaugeForm stored={stored} without={without} />
            <StillDrawing drawing={changeDrawing(rows)} />
            <ChangeTable rows={rows} />
            <p>
              ‘Better’ and ‘worse’ are said only where the interval leaves out zero. Less is better in every
              column; what is gained in one is often paid in another: fewer needless re-dos beside more missed
              damage is a choice, not a gain.
            </p>
            <DownloadLinks
              of="scenarios"
              csv="/what-if/download"
              picture={address('/what-if/picture', { without: without ?? undefined })}
            />
          </Panel>
          <Panel id="scenarios" title="Side by side">
            <ScenarioTable rows={rows} />
            <dl className={styles.meanings}>
              {MEASURES.map((measure) => (
                <div key={measure}>
                  <dt>{MEASURE_NAMES[measure]}</dt>
                  <dd>{MEASURE_MEANINGS[measure]}</dd>
                </div>
              ))}
            </dl>
          </Panel>
          <Panel id="method" title="How this is worked out">
            <p>{answer?.method}</p>
            <p>
              Minutes taken for the work: {USUAL_MINUTES.hang} to set and hang a gauge, {USUAL_MINUTES.rehang}{' '}
              to hang it again, {USUAL_MINUTES.reading} a reading, {USUAL_MINUTES.redo} to work on a vehicle
              again and measure it once more. They are judgements, not measured in this shop, and have no
              interval.
            </p>
            {rests !== null && (
              <p>
                It rests on everything measured from {day(rests.from, timeZone)} to {day(rests.to, timeZone)}:
                the scatter of the hands, their mis-sets and the biases of the gauges are learned from all of
                it together. It cannot be held to a shorter time, since a few months are not enough to tell
                rare mis-sets from damage. How they changed stands under{' '}
                <Link href="/rates/signals">signals</Link>, and the setups behind them under{' '}
                <Link href="/technicians">technicians</Link> and <Link href="/gauges">gauges</Link>.
              </p>
            )}
          </Panel>
        </>
      )}
    </Page>
  );
}
