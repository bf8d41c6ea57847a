import Link from 'next/link';
import { FiguresRow } from '@/app/_look/figures-row';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import prose from '@/app/_look/prose.module.css';
import { NothingYet } from '@/app/_overview/nothing-yet';
import { missCostOf } from '@/app/_shop/miss-cost';
import { decimal, grouped, percent } from '@/app/_words/numbers';
import { CLEAR } from '@/lib/assess/calibration';
import { CalledPanel } from './_parts/called-panel';
import { asForetold, calledBy, countsOf, reliabilityOf, scoresOf } from './_parts/proofs';
import { ReliabilityPanel } from './_parts/reliability-panel';
import { ScorePanel } from './_parts/score-panel';
import { countJobs, may, provedHeights } from '@/lib/access';
import { enter } from '@/app/_shop/enter';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';

export const generateMetadata = titled(() => words('calibration')('title'));

/** Fewer proved heights than this say next to nothing, and the page says so before any figure. */
const FEW_HEIGHTS = 50;

export default async function Calibration() {
  const viewer = await enter();
  const { shop } = viewer;
  const t = words('calibration');
  const [proofs, jobs] = await Promise.all([provedHeights(viewer), countJobs(viewer)]);
  if (jobs === 0) return <NothingYet title={t('title')} />;
  const heights = asForetold(proofs);
  const bins = reliabilityOf(heights);
  const counts = countsOf(proofs);
  return (
    <Page title={t('title')} lead={t('lead')}>
      <ExcludedNote viewer={viewer} />
      <FiguresRow
        figures={[
          {
            name: t('checked.name'),
            value: grouped(counts.heights),
            detail: t('checked.detail'),
          },
          {
            name: t('proved.name'),
            value: grouped(counts.proved),
            detail: t('proved.detail', { rounds: counts.rounds, recorded: counts.recorded }),
          },
          {
            name: t('open.name'),
            value: grouped(counts.heights - counts.proved),
            detail: t('open.detail'),
          },
          {
            name: t('foretold.name'),
            value: grouped(counts.ahead),
            detail: t('foretold.detail'),
          },
        ]}
      />
      {counts.proved < FEW_HEIGHTS && (
        <Note>
          <p>{t('few', { n: counts.proved })}</p>
        </Note>
      )}
      <CalledPanel
        called={calledBy(heights, missCostOf(shop))}
        missCost={missCostOf(shop)}
        sets={may(viewer, 'change settings')}
      />
      <ReliabilityPanel cause="gauge" title={t('said.gauge')} bins={bins.gauge} />
      <ReliabilityPanel cause="body" title={t('said.body')} bins={bins.body} />
      <ReliabilityPanel cause="both" title={t('said.both')} bins={bins.both} />
      <ReliabilityPanel cause="neither" title={t('said.neither')} bins={bins.neither} />
      <ScorePanel scores={scoresOf(heights)} />
      <Panel id="how" title={t('how.title')}>
        <div className={prose.prose}>
          <ul>
            <li>{t('how.counts')}</li>
            <li>{t('how.proof', { clear: percent(CLEAR) })}</li>
            <li>{t('how.ends')}</li>
            <li>{t('how.doubted')}</li>
            <li>{t('how.sides', { factor: decimal(1.4, 1) })}</li>
            <li>{t('how.left', { most: grouped(5000) })}</li>
          </ul>
          <p>
            <Link href="/method">{t('how.method')}</Link>
          </p>
        </div>
      </Panel>
    </Page>
  );
}
