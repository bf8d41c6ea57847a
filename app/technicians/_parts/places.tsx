import { drawnOnce } from '@/app/_look/still';
import Link from 'next/link';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { estimateTick } from '@/app/_figures/estimate-axis';
import { IntervalBar, IntervalScale } from '@/app/_figures/interval-bar';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { Tag } from '@/app/_look/tag';
import { address } from '@/app/_words/address';
import { chance } from '@/app/_words/habits';
import { bareMillimetres, decimal, grouped, unit } from '@/app/_words/numbers';
import { whyTold } from '@/app/_words/why';
import { words } from '@/app/_words/words';
import type { PlaceFigure, PlaceKind } from '@/lib/assess/my-hand';
import type { HandQuestion } from './hand-question';
import { KIND_KEYS, kindInSentence, KINDS, placeAxis, placeName } from './place-axis';

interface PlacesProps {
  places: Record<PlaceKind, PlaceFigure[]>;
  /** The page of this hand, and what it is asked. */
  here: string;
  question: HandQuestion;
}

/** Where this hand sets less surely than elsewhere, by kinds of place. */
export const Places = drawnOnce(function Places({ places, here, question }: PlacesProps) {
  const t = words('hand');
  const withGauge = (gauge: string) => address(here, { ...question, gauge });
  const unsure = KINDS.flatMap((kind) =>
    places[kind].filter(({ lessSure }) => lessSure).map(({ name }) => placeName(kind, name)),
  );
  return (
    <Panel id="places" title={t('places.title')} note={t('places.note')}>
      <p>{unsure.length === 0 ? t('places.none') : t('places.unsure', { places: unsure.join('; ') })}</p>
      {KINDS.map((kind) => (
        <div key={kind}>
          <PlaceTable kind={kind} places={places[kind]} withGauge={withGauge} />
          <DownloadLinks
            of={t('places.download', { kind: kindInSentence(kind) })}
            picture={address(`${here}/picture`, { ...question, of: kind })}
          />
        </div>
      ))}
    </Panel>
  );
});

interface PlaceTableProps {
  withGauge: (gauge: string) => string;
  kind: PlaceKind;
  places: PlaceFigure[];
}

function PlaceTable({ kind, places, withGauge }: PlaceTableProps) {
  const t = words('hand');
  const axis = placeAxis(places);
  return (
    <Table
      caption={t('places.caption', { kind: kindInSentence(kind) })}
      rows={places}
      rowKey={({ name }) => name}
      empty={t('places.empty', { kind: kindInSentence(kind) })}
      columns={[
        {
          key: 'place',
          head: t(`places.heads.${KIND_KEYS[kind]}`),
          names: true,
          wraps: true,
          cell: ({ name }) =>
            kind === 'gauge' ? (
              <Link href={`${withGauge(name)}#setups`} prefetch={false}>
                {name}
              </Link>
            ) : (
              placeName(kind, name)
            ),
        },
        {
          key: 'mark',
          head: t('places.mark'),
          whole: true,
          cell: (one) => (one.lessSure ? <Tag name="caution">{t('places.lessSure')}</Tag> : markOf(one)),
        },
        {
          key: 'sd',
          head: t('places.scatter', { unit: unit() }),
          numeric: true,
          cell: ({ setting: { sd, low, high } }) => withInterval(sd, low, high, bareMillimetres),
        },
        {
          key: 'bar',
          head: <IntervalScale axis={axis} text={(tick) => estimateTick(tick, 'sd', axis)} />,
          cell: ({ setting: { sd, low, high, why } }) =>
            sd === null ? whyTold(why) : <IntervalBar axis={axis} value={sd} low={low} high={high} />,
        },
        {
          key: 'ratio',
          head: t('places.ratio'),
          numeric: true,
          cell: ({ ratio, low, high }) => withInterval(ratio, low, high, decimal),
        },
        {
          key: 'p',
          head: t('places.p'),
          numeric: true,
          cell: ({ p }) => (p === null ? t('none') : chance(p)),
        },
        { key: 'n', head: t('places.settings'), numeric: true, cell: ({ setups }) => grouped(setups) },
      ]}
    />
  );
}

/** The adjusted p below which a place differs from elsewhere beyond chance, as for those that are marked. */
const BEYOND_CHANCE = 0.05;

/** What is said of a place that is not less sure than elsewhere. */
function markOf({ p, ratio }: PlaceFigure): string {
  const t = words('hand');
  if (p === null) return t('places.cannotSay');
  return p <= BEYOND_CHANCE && (ratio ?? 1) < 1 ? t('places.surer') : t('places.noDifference');
}

/** `1.91 (1.53 to 2.54)` */
function withInterval(
  value: number | null,
  low: number | null,
  high: number | null,
  print: (value: number, digits: number) => string,
): string {
  const t = words('hand');
  if (value === null) return t('none');
  return low === null || high === null
    ? print(value, 2)
    : t('withInterval', { value: print(value, 2), low: print(low, 2), high: print(high, 2) });
}
