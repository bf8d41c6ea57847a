import type { Metadata } from 'next';
import Link from 'next/link';
import { redirect } from 'next/navigation';
import { attentionNow } from '@/app/_overview/attention';
import { missCostOf } from '@/app/_shop/miss-cost';
import { AttentionList } from '@/app/_overview/attention-list';
import { departuresFrom } from '@/app/_overview/departures';
import { NothingYet } from '@/app/_overview/nothing-yet';
import { monthPoints } from '@/app/_figures/rates-over-time/months';
import { RateGroups } from '@/app/_figures/rate-groups';
import { RatesOverTime } from '@/app/_figures/rates-over-time/rates-over-time';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { FiguresAge } from '@/app/_shop/figures-age';
import { FiguresRow } from '@/app/_look/figures-row';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { rateOf } from '@/app/_shop/rate-of';
import { address, technicianAddress } from '@/app/_words/address';
import { sectionName } from '@/app/_words/jobs';
import { count, grouped, percent } from '@/app/_words/numbers';
import { day } from '@/app/_words/times';
import { SECTIONS } from '@/lib/measure';
import {
  countJobs,
  countOutcomes,
  everybodysFigures,
  listLoadedFiles,
  listSetups,
  may,
  signalsAnswer,
} from '@/lib/access';
import { enter } from '@/app/_shop/enter';

export const metadata: Metadata = { title: { absolute: 'Rehang: overview' } };

export default async function Overview() {
  const viewer = await enter();
  const { shop } = viewer;
  if (!may(viewer, 'see everybody’s figures')) redirect(technicianAddress(viewer.code));
  const jobs = await countJobs(viewer);
  if (jobs === 0) return <NothingYet title={shop.name} />;

  const newest = await listSetups(viewer, { pageSize: 1 });
  const now = newest.rows[0]?.hungAt ?? 0;
  const [all, months, technicians, sheets, sections, attention, figures, files, signals] = await Promise.all([
    countOutcomes(viewer, 'shop'),
    countOutcomes(viewer, 'month'),
    countOutcomes(viewer, 'technician'),
    countOutcomes(viewer, 'sheet'),
    countOutcomes(viewer, 'section'),
    attentionNow(viewer, now, missCostOf(shop)),
    everybodysFigures(viewer),
    listLoadedFiles(viewer),
    signalsAnswer(viewer),
  ]);
  const whole = all[0] ?? { jobs: 0, right: 0 };
  const rate = rateOf(whole.right, whole.jobs);
  const readings = files.reduce((sum, file) => sum + file.added, 0);

  return (
    <Page
      title={shop.name}
      lead={`How often a repair is right the first time, and what needs doing now. Newest reading ${day(now, shop.timeZone)}.`}
    >
      <FiguresAge fit={figures} timeZone={shop.timeZone} />
      <ExcludedNote viewer={viewer} />
      <FiguresRow
        figures={[
          {
            name: 'Right first time',
            value: rate.rate === null ? 'none yet' : percent(rate.rate),
            detail:
              rate.low === null || rate.high === null
                ? rate.why
                : `95 % interval ${percent(rate.low)} to ${percent(rate.high)}, ${rate.right} of ${count(rate.jobs, 'job')}`,
          },
          {
            name: 'Jobs',
            value: grouped(jobs),
            detail: <Link href={address('/jobs', { outcome: 'wrong' })}>those not right first time</Link>,
          },
          {
            name: 'Readings',
            value: grouped(readings),
            detail: count(files.length, 'file loaded', 'files loaded'),
          },
          {
            name: 'Rounds to settle',
            value: attention.open.length + attention.undecidable.length,
            detail: 'of the newest 200 rounds',
          },
        ]}
      />

      <Panel id="attention" title="What needs attention now">
        {figures === null ? (
          <p>What needs attention is known once the verdicts are worked out.</p>
        ) : (
          <AttentionList
            missCost={missCostOf(shop)}
            attention={attention}
            departures={departuresFrom(figures.figures)}
            signals={signals}
            now={now}
            timeZone={shop.timeZone}
          />
        )}
      </Panel>

      <Panel
        id="months"
        title="Right first time, month by month"
        note="A job is right first time when every controlled dimension of its first round after repair is within tolerance."
      >
        <RatesOverTime
          words={{ title: 'Right first time', unit: 'job' }}
          points={monthPoints(months.map(({ key, jobs: of, right }) => ({ month: key, of, hits: right })))}
          overall={rate.rate}
        >
          Each dot is a month’s rate; the stroke through it is its 95 % interval (Wilson). The dashed line is
          the rate over all months. Months whose strokes overlap may not differ at all.
        </RatesOverTime>
      </Panel>

      <Panel
        id="groups"
        title="Right first time, side by side"
        note="In the order of names, never of rates. The band behind the bars is the shop’s own interval; a small group has a wide bar and says little."
      >
        <RateGroups
          caption="By technician who measured the first round after repair"
          head="Technician"
          shop={rate}
          groups={byKey(technicians).map(({ key, jobs: of, right }) => ({
            key,
            name: <Link href={technicianAddress(key)}>{key}</Link>,
            rate: rateOf(right, of),
          }))}
        />
        <RateGroups
          caption="By section: jobs with every controlled dimension of that section within tolerance"
          head="Section"
          shop={null}
          groups={SECTIONS.flatMap((section) =>
            sections
              .filter(({ key }) => key === section)
              .map(({ jobs: of, right }) => ({
                key: section,
                name: sectionName(section),
                rate: rateOf(right, of),
              })),
          )}
        />
        <RateGroups
          caption="By dimension sheet"
          head="Sheet"
          shop={rate}
          groups={byKey(sheets).map(({ key, jobs: of, right }) => ({
            key,
            name: key === '' ? 'none named' : <Link href={address('/jobs', { sheet: key })}>{key}</Link>,
            rate: rateOf(right, of),
          }))}
        />
      </Panel>
    </Page>
  );
}

function byKey<Counted extends { key: string }>(counts: readonly Counted[]): Counted[] {
  return [...counts].sort((a, b) => a.key.localeCompare(b.key, 'en', { numeric: true }));
}
