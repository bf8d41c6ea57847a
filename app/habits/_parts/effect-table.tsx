import Link from 'next/link';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { IntervalBar, IntervalScale } from '@/app/_figures/interval-bar';
import { drawnOnce } from '@/app/_look/still';
import { Table } from '@/app/_look/table';
import { address } from '@/app/_words/address';
import { chance, effectHead, effectTick, effectValue } from '@/app/_words/habits';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import type { EffectUnit, HabitCell, HabitEffect, HabitKey } from '@/lib/assess/habits';
import { effectAxis } from './effect-axis';
import { unitsOf } from './effect-drawing';
import { placesOf, type HabitPlace, type HabitQuestion } from './habit-question';
import { StateTag } from './state-tag';

interface EffectTableProps {
  /** Cells of one habit, in the order in which they are to stand. */
  cells: readonly HabitCell[];
  caption: string;
  habit: HabitKey;
  /** What the habits are held to. */
  question: HabitQuestion;
}

type Shown = HabitCell & { effect: HabitEffect };

/** Every technician's effect with its interval: a table a unit, since figures in different units share no axis. */
export const EffectTables = drawnOnce(function EffectTables({
  cells,
  caption,
  habit,
  question,
}: EffectTableProps) {
  const place = placesOf(question);
  const files = { ...question, technician: undefined, habit };
  const shown = cells.filter((cell): cell is Shown => cell.effect !== null);
  const units = unitsOf(shown);
  const none = cells.filter(({ effect }) => effect === null);
  return (
    <>
      {units.map((unit) => (
        <div key={unit}>
          <OneUnit
            unit={unit}
            caption={caption}
            cells={shown.filter(({ effect }) => effect.unit === unit)}
            place={place}
          />
          <DownloadLinks of={caption} picture={address('/habits/picture', { ...files, unit })} />
        </div>
      ))}
      {none.length > 0 && (
        <ul>
          {none.map(({ technician, evidence }) => (
            <li key={technician}>
              {words('habits')('technicians.evidence', { technician, evidence: told(evidence) })}
            </li>
          ))}
        </ul>
      )}
    </>
  );
});

interface OneUnitProps {
  unit: EffectUnit;
  cells: Shown[];
  caption: string;
  place: HabitPlace;
}

function OneUnit({ unit, cells, caption, place }: OneUnitProps) {
  const t = words('habits');
  const axis = effectAxis(
    cells.map(({ effect }) => effect),
    unit,
  );
  return (
    <Table
      caption={caption}
      rows={cells}
      rowKey={({ technician }) => technician}
      columns={[
        {
          key: 'technician',
          head: t('technician'),
          names: true,
          cell: ({ technician, habit }) => (
            <Link href={place(habit, technician)} prefetch={false}>
              {technician}
            </Link>
          ),
        },
        {
          key: 'state',
          head: t('technicians.state'),
          whole: true,
          cell: ({ state }) => <StateTag state={state} />,
        },
        {
          key: 'effect',
          head: effectHead(unit),
          numeric: true,
          cell: ({ effect }) => effectValue(effect.value, unit),
        },
        {
          key: 'interval',
          head: t('technicians.interval'),
          numeric: true,
          cell: ({ effect }) =>
            t('range', { low: effectValue(effect.low, unit), high: effectValue(effect.high, unit) }),
        },
        {
          key: 'bar',
          head: <IntervalScale axis={axis} text={(tick) => effectTick(tick, unit)} />,
          cell: ({ effect }) => (
            <IntervalBar
              axis={axis}
              value={effect.value}
              low={effect.low}
              high={effect.high}
              line={effect.reference}
            />
          ),
        },
        {
          key: 'reference',
          head: t('technicians.without'),
          numeric: true,
          cell: ({ effect }) =>
            effect.reference === null ? t('technicians.notKnown') : effectValue(effect.reference, unit),
        },
        {
          key: 'p',
          head: t('technicians.p'),
          numeric: true,
          cell: ({ p }) => (p === null ? t('none') : chance(p)),
        },
        {
          key: 'adjusted',
          head: t('technicians.adjusted'),
          numeric: true,
          cell: ({ adjustedP }) => (adjustedP === null ? t('none') : chance(adjustedP)),
        },
      ]}
    />
  );
}
