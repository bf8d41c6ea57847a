import type { Metadata } from 'next';
import Link from 'next/link';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { enter } from '@/app/_shop/enter';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { FiguresAge } from '@/app/_shop/figures-age';
import { FiguresPending } from '@/app/_shop/figures-pending';
import { count } from '@/app/_words/numbers';
import { everybodysFigures, signalsAnswer } from '@/lib/access';
import type { SignalChart, Subject } from '@/lib/assess/signals';
import { ChartCard } from './_parts/chart-card';
import styles from './_parts/chart-card.module.css';
import { chartName, seriesKey } from './_parts/names';
import { SignalLine } from './_parts/signal-line';

export const metadata: Metadata = { title: 'Signals' };

const HOW_TO_READ =
  'Above the smoothed score; below both sums, upward as a full line and downward as a broken one. Dotted lines are the limits; a larger dot lies beyond one. All in standard deviations from the series’ own past.';

const GROUPS: readonly { kind: Subject['kind']; title: string }[] = [
  { kind: 'shop', title: 'The shop' },
  { kind: 'gauge', title: 'Gauges' },
  { kind: 'sheet', title: 'Sheets' },
  { kind: 'technician', title: 'Technicians' },
];

export default async function Signals() {
  const viewer = await enter();
  const [answer, figures] = await Promise.all([signalsAnswer(viewer), everybodysFigures(viewer)]);
  if (answer === null) return <FiguresPending title="Signals" />;
  const { signals, charts, design, quiet } = answer;
  const signalled = new Set(signals.map(({ what, subject }) => seriesKey(what, subject)));
  const isSignal = ({ series: { what, subject } }: SignalChart) => signalled.has(seriesKey(what, subject));
  return (
    <Page
      above={<Link href="/rates">Right first time</Link>}
      title="Signals"
      lead="Right first time and setting error, month by month, each held against its own past: what changed beyond chance, and what only looks so."
    >
      <FiguresAge fit={figures} timeZone={viewer.shop.timeZone} />
      <ExcludedNote viewer={viewer} />
      <Panel
        id="now"
        title="Beyond a limit in the last months"
        note={`Where nothing changes, this list shows a line by chance about once in ${design.falseAlarmPeriods} months.`}
      >
        {quiet !== null && <p>{quiet}</p>}
        {signals.length > 0 && (
          <ul data-plain>
            {signals.map((signal) => (
              <SignalLine key={seriesKey(signal.what, signal.subject)} signal={signal} />
            ))}
          </ul>
        )}
        <p>{design.method}</p>
        <DownloadLinks of="all series" csv="/rates/signals/download" />
      </Panel>
      {GROUPS.map(({ kind, title }) => {
        const own = charts.filter(({ series }) => series.subject.kind === kind).sort(byName);
        return (
          own.length > 0 && (
            <Panel key={kind} id={kind} title={title} note={kind === 'shop' ? HOW_TO_READ : undefined}>
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
      <summary>{count(charts.length, 'series', 'series')} without a signal</summary>
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
