import Link from 'next/link';
import { z } from 'zod';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { enter } from '@/app/_shop/enter';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { FiguresAge } from '@/app/_shop/figures-age';
import { FiguresPending } from '@/app/_shop/figures-pending';
import { address } from '@/app/_words/address';
import { titled } from '@/app/_words/titled';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import { inOrder } from '@/app/_words/in-order';
import { everybodysFigures, signalCharts, signalsAnswer } from '@/lib/access';
import type { SignalChart, Subject } from '@/lib/assess/signals';
import { ChartCard } from './_parts/chart-card';
import styles from './_parts/chart-card.module.css';
import { chartName, seriesKey } from './_parts/names';
import { SignalList } from './_parts/signal-list';

export const generateMetadata = titled(() => words('rates')('signals.title'));

const GROUPS: readonly Subject['kind'][] = ['shop', 'gauge', 'sheet', 'technician'];

/** Which of the series without a signal is to be shown. */
const Asked = z.object({ series: z.string().max(300).optional().catch(undefined) });

export default async function Signals({ searchParams }: { searchParams: Promise<unknown> }) {
  const viewer = await enter();
  const { series: asked } = Asked.parse(await searchParams);
  const t = words('rates');
  const [answer, charts, figures] = await Promise.all([
    signalsAnswer(viewer),
    signalCharts(viewer),
    everybodysFigures(viewer),
  ]);
  if (answer === null || charts === null) return <FiguresPending title={t('signals.title')} />;
  const { signals, design, quiet } = answer;
  const signalled = new Set(signals.map(({ what, subject }) => seriesKey(what, subject)));
  const isShown = ({ series: { what, subject } }: SignalChart) => {
    const key = seriesKey(what, subject);
    return subject.kind === 'shop' || signalled.has(key) || key === asked;
  };
  return (
    <Page above={<Link href="/rates">{t('title')}</Link>} title={t('signals.title')} lead={t('signals.lead')}>
      <FiguresAge fit={figures} timeZone={viewer.shop.timeZone} />
      <ExcludedNote viewer={viewer} />
      <Panel
        id="now"
        title={t('signals.now')}
        note={t('signals.nowNote', { months: design.falseAlarmPeriods })}
      >
        {quiet !== null && <p>{told(quiet)}</p>}
        {signals.length > 0 && <SignalList signals={signals} />}
        <p>{told(design.method)}</p>
        <DownloadLinks of={t('signals.download')} csv="/rates/signals/download" />
      </Panel>
      {GROUPS.map((kind) => {
        const own = charts.filter(({ series }) => series.subject.kind === kind).sort(byName);
        return (
          own.length > 0 && (
            <Panel
              key={kind}
              id={kind}
              title={t(`signals.groups.${kind}`)}
              note={kind === 'shop' ? t('signals.howToRead') : undefined}
            >
              <Cards charts={own.filter(isShown)} />
              <Quiet charts={own.filter((chart) => !isShown(chart))} />
            </Panel>
          )
        );
      })}
    </Page>
  );
}

function Cards({ charts }: { charts: readonly SignalChart[] }) {
  if (charts.length === 0) return null;
  return (
    <div className={styles.cards}>
      {charts.map((chart) => (
        <ChartCard key={seriesKey(chart.series.what, chart.series.subject)} chart={chart} />
      ))}
    </div>
  );
}

/** Series in which nothing stands beyond a limit: there to be asked for, not in the way. */
function Quiet({ charts }: { charts: readonly SignalChart[] }) {
  if (charts.length === 0) return null;
  return (
    <details className={styles.quiet}>
      <summary>{words('rates')('signals.quiet', { n: charts.length })}</summary>
      <ul data-plain className={styles.names}>
        {charts.map((chart) => {
          const key = seriesKey(chart.series.what, chart.series.subject);
          return (
            <li key={key}>
              <Link href={`${address('/rates/signals', { series: key })}#${key}`} prefetch={false}>
                {chartName(chart)}
              </Link>
            </li>
          );
        })}
      </ul>
    </details>
  );
}

const byName = (a: SignalChart, b: SignalChart): number => {
  const [x, y] = [a, b].map(({ series }) => series.subject.name ?? '');
  return inOrder(x ?? '', y ?? '') || chartName(a).localeCompare(chartName(b), 'en');
};
