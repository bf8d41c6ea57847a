import Link from 'next/link';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { estimateTick } from '@/app/_figures/estimate-axis';
import { IntervalBar, IntervalScale } from '@/app/_figures/interval-bar';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { Tag } from '@/app/_look/tag';
import { chance } from '@/app/_words/habits';
import { bareMillimetres, grouped } from '@/app/_words/numbers';
import type { PlaceFigure, PlaceKind } from '@/lib/assess/my-hand';
import { KINDS, placeAxis } from './place-axis';

const HEADS: Record<PlaceKind, string> = {
  'section and side': 'Section and side',
  'distance from the zero span': 'Outwards from the zero stations',
  gauge: 'Gauge',
};

interface PlacesProps {
  places: Record<PlaceKind, PlaceFigure[]>;
  /** Where this hand is told with another gauge. */
  withGauge: (gauge: string) => string;
  /** Where a table is had as a picture. */
  picture: (kind: PlaceKind) => string;
}

/** Where this hand sets less surely than elsewhere, by kinds of place. */
export function Places({ places, withGauge, picture }: PlacesProps) {
  const unsure = KINDS.flatMap((kind) => places[kind].filter(({ lessSure }) => lessSure));
  return (
    <Panel
      id="places"
      title="Where this hand is less sure"
      note="Scatter of setting by place, likely mis-sets set aside, each against the same hand everywhere else. Places stand in their order, not by size; one is marked where the difference is beyond chance, counted over the places of its kind."
    >
      <p>
        {unsure.length === 0
          ? 'No place is less sure than the others beyond chance.'
          : `Beyond chance less sure at: ${unsure.map(({ name }) => name).join('; ')}.`}
      </p>
      {KINDS.map((kind) => (
        <div key={kind}>
          <PlaceTable kind={kind} places={places[kind]} withGauge={withGauge} />
          <DownloadLinks of={`scatter of setting by ${kind}`} picture={picture(kind)} />
        </div>
      ))}
    </Panel>
  );
}

interface PlaceTableProps extends Pick<PlacesProps, 'withGauge'> {
  kind: PlaceKind;
  places: PlaceFigure[];
}

function PlaceTable({ kind, places, withGauge }: PlaceTableProps) {
  const axis = placeAxis(places);
  return (
    <Table
      caption={`Scatter of setting by ${kind}`}
      rows={places}
      rowKey={({ name }) => name}
      empty={`No setting can be told by ${kind} yet.`}
      columns={[
        {
          key: 'place',
          head: HEADS[kind],
          names: true,
          wraps: true,
          cell: ({ name }) =>
            kind === 'gauge' ? (
              <Link href={`${withGauge(name)}#setups`} prefetch={false}>
                {name}
              </Link>
            ) : (
              name
            ),
        },
        {
          key: 'mark',
          head: 'Beyond chance',
          whole: true,
          cell: (one) => (one.lessSure ? <Tag name="caution">Less sure</Tag> : markOf(one)),
        },
        {
          key: 'sd',
          head: 'Scatter, mm (95\u00a0%)',
          numeric: true,
          cell: ({ setting: { sd, low, high } }) => withInterval(sd, low, high),
        },
        {
          key: 'bar',
          head: <IntervalScale axis={axis} text={(tick) => estimateTick(tick, 'sd', axis)} />,
          cell: ({ setting: { sd, low, high, why } }) =>
            sd === null ? why : <IntervalBar axis={axis} value={sd} low={low} high={high} />,
        },
        {
          key: 'ratio',
          head: 'Times as elsewhere (95\u00a0%)',
          numeric: true,
          cell: ({ ratio, low, high }) => withInterval(ratio, low, high),
        },
        { key: 'p', head: 'Adjusted p', numeric: true, cell: ({ p }) => (p === null ? 'none' : chance(p)) },
        { key: 'n', head: 'Settings', numeric: true, cell: ({ setups }) => grouped(setups) },
      ]}
    />
  );
}

/** The adjusted p below which a place differs from elsewhere beyond chance, as for those that are marked. */
const BEYOND_CHANCE = 0.05;

/** What is said of a place that is not less sure than elsewhere. */
function markOf({ p, ratio }: PlaceFigure): string {
  if (p === null) return 'cannot say';
  return p <= BEYOND_CHANCE && (ratio ?? 1) < 1 ? 'surer' : 'no difference';
}

/** `1.91 (1.53 to 2.54)` */
function withInterval(value: number | null, low: number | null, high: number | null): string {
  if (value === null) return 'none';
  const interval =
    low === null || high === null ? '' : ` (${bareMillimetres(low, 2)} to ${bareMillimetres(high, 2)})`;
  return bareMillimetres(value, 2) + interval;
}
