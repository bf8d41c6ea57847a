import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { EstimateTable } from '@/app/_figures/estimate-table';
import type { RatePoint } from '@/app/_figures/rates-over-time/point';
import { RatesOverTime } from '@/app/_figures/rates-over-time/rates-over-time';
import button from '@/app/_look/button.module.css';
import { FiguresRow } from '@/app/_look/figures-row';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Pager } from '@/app/_look/pager';
import { Panel } from '@/app/_look/panel';
import { FiguresAge } from '@/app/_shop/figures-age';
import { address, technicianAddress, type Query } from '@/app/_words/address';
import { count, grouped } from '@/app/_words/numbers';
import { pageNumber } from '@/app/_words/page-number';
import { labelFrom } from '@/app/_words/parameters';
import { estimateOf } from '../_parts/estimates';
import { missCostOf } from '@/app/_shop/miss-cost';
import { DoubtfulHeights } from '../_parts/doubtful-heights';
import { rateFigure } from '../_parts/rate-figure';
import { missetMonths } from '../_parts/misset-months';
import { SetupTable } from '../_parts/setup-table';
import { currentFigures, getPerson, heightsFor, listSetups } from '@/lib/access';
import { enter } from '@/app/_shop/enter';

interface Props {
  params: Promise<{ code: string }>;
  searchParams: Promise<Query>;
}

const SETUPS_A_PAGE = 20;

/** So many of the newest heights are looked at: enough for a year of a busy hand, and no more with its history. */
const HEIGHTS = 5000;

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Technician ${labelFrom((await params).code)}` };
}

export default async function TechnicianPage({ params, searchParams }: Props) {
  const code = labelFrom((await params).code);
  const page = pageNumber(await searchParams);
  const viewer = await enter();
  const { shop } = viewer;
  const [person, figures, setups, heights] = await Promise.all([
    getPerson(viewer, code),
    currentFigures(viewer),
    listSetups(viewer, { technician: code, page, pageSize: SETUPS_A_PAGE }),
    heightsFor(viewer, { technician: code, limit: HEIGHTS }),
  ]);
  if (person === null) notFound();
  const own = figures?.figures.technicians.find((one) => one.technician === code) ?? null;
  const band = figures?.figures.shop;
  const months = missetMonths(heights, shop.timeZone);

  return (
    <Page
      above={<Link href="/technicians">All technicians</Link>}
      title={person.name === '' || person.name === code ? code : `${person.name}, ${code}`}
      lead="How repeatable this hand is, how it sets gauges, and the setups behind each figure."
      actions={
        <Link className={button.button} href={address('/jobs', { technician: code })}>
          Jobs measured by {code}
        </Link>
      }
    >
      <FiguresAge fit={figures} timeZone={shop.timeZone} />
      {own === null ? (
        <Note>
          <p>There are no figures for {code} yet: they come with the first readings that are assessed.</p>
        </Note>
      ) : (
        <>
          <FiguresRow
            figures={[
              { name: 'Jobs', value: grouped(own.jobs) },
              { name: 'Setups', value: grouped(own.setups) },
              { name: 'Readings', value: grouped(own.readings) },
              rateFigure(own.firstTimeRight),
            ]}
          />
          <Panel
            id="hand"
            title="This hand beside the shop"
            note="The shop as a whole stands under each figure. Where the two intervals overlap, the difference may be chance."
          >
            <EstimateTable
              caption="Scatter, standard deviations"
              head="What"
              kind="sd"
              estimates={[
                { key: 'repeatability', name: 'Reading again', ...estimateOf(own, 'repeatability') },
                ...(band === undefined ? [] : [shopRow('The shop, reading again', band.repeatability)]),
                { key: 'setting', name: 'Setting again', ...estimateOf(own, 'setting') },
                ...(band === undefined ? [] : [shopRow('The shop, setting again', band.setting)]),
              ]}
            />
            <EstimateTable
              caption="Bias of heights against the mean of all technicians"
              head="What"
              kind="bias"
              estimates={[{ key: 'bias', name: 'Bias', ...estimateOf(own, 'bias') }]}
            />
          </Panel>
        </>
      )}
      {months.length > 1 && (
        <Panel
          id="months"
          title="Gauges set wrong, month by month"
          note="Setups whose gauge part was more likely than not beyond the tolerance, by the verdicts on their heights."
        >
          <RatesOverTime
            words={{ title: 'Setups likely mis-set', unit: 'setup' }}
            points={months}
            overall={overallOf(months)}
          >
            Each dot is a month’s share; the stroke through it is its 95 % interval (Wilson). The dashed line
            is the share over all months shown. A tilted datum counts against the setups it was read in,
            whoever hung the zero gauges.
          </RatesOverTime>
        </Panel>
      )}
      <DoubtfulHeights heights={heights} timeZone={shop.timeZone} missCost={missCostOf(shop)} />
      <Panel
        id="setups"
        title="The setups behind these figures"
        note="Newest first. The label of a setup opens its readings on the job’s page."
      >
        <SetupTable
          setups={setups.rows}
          timeZone={shop.timeZone}
          show="gauge"
          caption={`${count(setups.total, 'setup')} by ${code}`}
        />
        <Pager
          page={page}
          pages={Math.max(1, Math.ceil(setups.total / SETUPS_A_PAGE))}
          to={(number) => `${address(technicianAddress(code), { page: number })}#setups`}
        />
      </Panel>
    </Page>
  );
}

function overallOf(points: readonly RatePoint[]): number | null {
  const of = points.reduce((sum, point) => sum + point.of, 0);
  return of === 0 ? null : points.reduce((sum, point) => sum + point.hits, 0) / of;
}

function shopRow(
  name: string,
  sd: { sd: number | null; low: number | null; high: number | null; why: string | null },
) {
  return { key: name, name, value: sd.sd, low: sd.low, high: sd.high, why: sd.why, rests: 'all technicians' };
}
