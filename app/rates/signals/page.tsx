import Link from 'next/link';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { enter } from '@/app/_shop/enter';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { FiguresAge } from '@/app/_shop/figures-age';
import { FiguresPending } from '@/app/_shop/figures-pending';
import { titled } from '@/app/_words/titled';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import { everybodysFigures, signalsAnswer } from '@/lib/access';
import type { SignalChart, Subject } from '@/lib/assess/signals';
import { ChartCard } from './_parts/chart-card';
import styles from './_parts/chart-card.module.css';
import { chartName, seriesKey } from './_parts/names';
import { SignalLine } from './_parts/signal-line';

export const generateMetadata = titled(() => words('rates')('signals.title'));

const GROUPS: readonly Subject['kind'][] = ['shop', 'gauge', 'sheet', 'technician'];

export default async function Signals() {
  const viewer = await enter();
  const t = words('rates');
  const [answer, figures] = await Promise.all([signalsAnswer(viewer), everybodysFigures(viewer)]);
  if (answer === null) return <FiguresPending title={t('signals.title')} />;
  const { signals, charts, design, quiet } = answer;
  const signalled = new Set(signals.map(({ what, subject }) => seriesKey(what, subject)));
  const isSignal = ({ series: { what, subject } }: SignalChart) => signalled.has(seriesKey(what, subject));
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
        {signals.length > 0 && (
          <ul data-plain>
            {signals.map((signal) => (
              <SignalLine key={seriesKey(signal.what, signal.subject)} signal={signal} />
            ))}
          </ul>
        )}
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
              <Cards charts={own.filter(isSignal)} />
              <QuietCards charts={own.filter((chart) => !isSignal(chart))} open={kind === 'shop'} />
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

/** Series in which nothing stands beyond a limit: there to be looked at, not in the way. */
function QuietCards({ charts, open }: { charts: readonly SignalChart[]; open: boolean }) {
  if (charts.length === 0) return null;
  if (open) return <Cards charts={charts} />;
  return (
    <details className={styles.quiet}>
      <summary>{words('rates')('signals.quiet', { n: charts.length })}</summary>
      <Cards charts={charts} />
    </details>
  );
}

const byName = (a: SignalChart, b: SignalChart): number => {
  const [x, y] = [a, b].map(({ series }) => series.subject.name ?? '');
  return (
    (x ?? '').localeCompare(y ?? '', 'en', { numeric: true }) ||
    chartName(a).localeCompare(chartName(b), 'en')
  );
};
