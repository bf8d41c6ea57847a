import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import type { RatePoint } from '@/app/_figures/rates-over-time/point';
import { RatesOverTime } from '@/app/_figures/rates-over-time/rates-over-time';
import button from '@/app/_look/button.module.css';
import { FiguresRow } from '@/app/_look/figures-row';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Pager } from '@/app/_look/pager';
import { Panel } from '@/app/_look/panel';
import { enter, viewerOrNull } from '@/app/_shop/enter';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { FiguresAge } from '@/app/_shop/figures-age';
import { missCostOf } from '@/app/_shop/miss-cost';
import { address, technicianAddress, type Query } from '@/app/_words/address';
import { count, grouped } from '@/app/_words/numbers';
import { pageNumber } from '@/app/_words/page-number';
import { labelFrom } from '@/app/_words/parameters';
import {
  currentFigures,
  getPerson,
  habitsAnswer,
  handAnswer,
  heightsFor,
  listSetups,
  may,
  roundVerdicts,
} from '@/lib/access';
import { BesideShop } from '../_parts/beside-shop';
import { LastRounds } from '../_parts/last-rounds';
import { missetMonths } from '../_parts/misset-months';
import { ownRounds } from '../_parts/own-rounds';
import { Places } from '../_parts/places';
import { Practice } from '../_parts/practice';
import { Quarters } from '../_parts/quarters';
import { rateFigure } from '../_parts/rate-figure';
import { SetupTable } from '../_parts/setup-table';
import { holdsQuarter, spanFrom, timesOf } from '../_parts/span';
import { SpanForm } from '../_parts/span-form';
import { Tolerance } from '../_parts/tolerance';

interface Props {
  params: Promise<{ code: string }>;
  searchParams: Promise<Query>;
}

const SETUPS_A_PAGE = 20;

const ROUNDS = 10;

/** So many of the newest heights are looked at: enough for a year of a busy hand, and no more with its history. */
const HEIGHTS = 5000;

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const code = labelFrom((await params).code);
  return { title: (await viewerOrNull())?.code === code ? 'My hand' : `Technician ${code}` };
}

export default async function TechnicianPage({ params, searchParams }: Props) {
  const code = labelFrom((await params).code);
  const query = await searchParams;
  const page = pageNumber(query);
  const { span, notes } = spanFrom(query);
  const viewer = await enter();
  const { shop } = viewer;
  const within = { technician: code, gauge: span.gauge, ...timesOf(span, shop.timeZone) };
  const [person, figures, hand, habits, rounds, heights, setups] = await Promise.all([
    getPerson(viewer, code),
    currentFigures(viewer),
    handAnswer(viewer, code),
    habitsAnswer(viewer),
    roundVerdicts(viewer, { ...within, limit: ROUNDS }),
    heightsFor(viewer, { ...within, limit: HEIGHTS }),
    listSetups(viewer, { ...within, page, pageSize: SETUPS_A_PAGE }),
  ]);
  if (person === null) notFound();
  const here = technicianAddress(code);
  const own = figures?.figures.technicians.find((one) => one.technician === code) ?? null;
  const months = missetMonths(heights, shop.timeZone);
  const name = person.name === '' || person.name === code ? code : `${person.name}, ${code}`;
  return (
    <Page
      above={may(viewer, 'see everybody’s figures') && <Link href="/technicians">All technicians</Link>}
      title={viewer.code === code ? `My hand: ${name}` : name}
      lead="How repeatable this hand is, how it sets gauges, what to practise, and the setups behind each figure."
      actions={
        <>
          <Link className={button.button} href={address('/jobs', { technician: code })}>
            Jobs measured by {code}
          </Link>
          <a className={button.button} href={`${here}/download`}>
            Download figures as CSV
          </a>
        </>
      }
    >
      <FiguresAge fit={figures} timeZone={shop.timeZone} />
      <ExcludedNote viewer={viewer} filter={{ technician: code }} />
      <Practice hand={hand} habits={habits?.filter(({ technician }) => technician === code) ?? []} />
      {own === null || figures === null ? (
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
          <BesideShop own={own} band={figures.figures.shop} />
        </>
      )}
      {hand !== null && <Tolerance hand={hand} />}
      {hand !== null && <Places hand={hand} page={here} />}
      <Panel
        id="span"
        title="In a time, with a gauge"
        note="What stands above rests on all readings; what follows can be held to a time and a gauge. Quarters are held to the time alone."
      >
        {notes.map((note) => (
          <Note key={note}>
            <p>{note}</p>
          </Note>
        ))}
        <SpanForm to={here} span={span} gauges={hand?.places.gauge.map((place) => place.name) ?? []} />
      </Panel>
      <LastRounds rounds={ownRounds(rounds, code, heights, missCostOf(shop))} timeZone={shop.timeZone} />
      {hand !== null && (
        <Quarters
          quarters={hand.quarters.filter(({ quarter }) => holdsQuarter(span, quarter))}
          held={span.from !== undefined || span.to !== undefined}
          pictures={(of) => address(`${here}/picture`, { of, from: span.from, to: span.to })}
        />
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
      <Panel
        id="setups"
        title="The setups behind these figures"
        note="Newest first. The label of a setup opens its readings on the job’s page."
      >
        <SetupTable
          setups={setups.rows}
          timeZone={shop.timeZone}
          show="gauge"
          caption={`${count(setups.total, 'setup')} by ${code}${span.gauge === undefined ? '' : ` with ${span.gauge}`}`}
        />
        <Pager
          page={page}
          pages={Math.max(1, Math.ceil(setups.total / SETUPS_A_PAGE))}
          to={(number) => `${address(here, { ...span, page: number })}#setups`}
        />
      </Panel>
    </Page>
  );
}

function overallOf(points: readonly RatePoint[]): number | null {
  const of = points.reduce((sum, point) => sum + point.of, 0);
  return of === 0 ? null : points.reduce((sum, point) => sum + point.hits, 0) / of;
}
