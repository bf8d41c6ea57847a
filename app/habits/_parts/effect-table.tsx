import Link from 'next/link';
import { IntervalBar, IntervalScale } from '@/app/_figures/interval-bar';
import { Table } from '@/app/_look/table';
import { chance, EFFECT_HEADS, effectTick, effectValue, habitAddress } from '@/app/_words/habits';
import type { EffectUnit, HabitCell, HabitEffect } from '@/lib/assess/habits';
import { effectAxis } from './effect-axis';
import { StateTag } from './state-tag';

interface EffectTableProps {
  /** Cells of one habit, in the order in which they are to stand. */
  cells: readonly HabitCell[];
  caption: string;
}

type Shown = HabitCell & { effect: HabitEffect };

/** Every technician's effect with its interval: a table a unit, since figures in different units share no axis. */
export function EffectTables({ cells, caption }: EffectTableProps) {
  const shown = cells.filter((cell): cell is Shown => cell.effect !== null);
  const units = [...new Set(shown.map(({ effect }) => effect.unit))];
  const none = cells.filter(({ effect }) => effect === null);
  return (
    <>
      {units.map((unit) => (
        <OneUnit
          key={unit}
          unit={unit}
          caption={caption}
          cells={shown.filter(({ effect }) => effect.unit === unit)}
        />
      ))}
      {none.length > 0 && (
        <ul>
          {none.map(({ technician, evidence }) => (
            <li key={technician}>
              {technician}: {evidence}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

function OneUnit({ unit, cells, caption }: { unit: EffectUnit; cells: Shown[]; caption: string }) {
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
          head: 'Technician',
          names: true,
          cell: ({ technician, habit }) => (
            <Link href={habitAddress(habit, technician)} prefetch={false}>
              {technician}
            </Link>
          ),
        },
        { key: 'state', head: 'State', whole: true, cell: ({ state }) => <StateTag state={state} /> },
        {
          key: 'effect',
          head: EFFECT_HEADS[unit],
          numeric: true,
          cell: ({ effect }) => effectValue(effect.value, unit),
        },
        {
          key: 'interval',
          head: '95 % interval',
          numeric: true,
          cell: ({ effect }) => `${effectValue(effect.low, unit)} to ${effectValue(effect.high, unit)}`,
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
          head: 'Without the habit',
          numeric: true,
          cell: ({ effect }) =>
            effect.reference === null ? 'not known' : effectValue(effect.reference, unit),
        },
        { key: 'p', head: 'p', numeric: true, cell: ({ p }) => (p === null ? 'none' : chance(p)) },
        {
          key: 'adjusted',
          head: 'Adjusted p',
          numeric: true,
          cell: ({ adjustedP }) => (adjustedP === null ? 'none' : chance(adjustedP)),
        },
      ]}
    />
  );
}
