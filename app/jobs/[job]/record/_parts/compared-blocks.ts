import { placeSaid, roundSaid } from '@/app/_record/trade';
import type { Block, PrintedCell, PrintedRow } from '@/app/_record';
import { bareMillimetres, probability, signed, unit } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import { QUANTITIES } from '@/lib/measure';
import { compared, lastOf, type Compared, type Held } from './compared';
import type { JobRecord } from './gather';

/** Every controlled dimension before and after, by the rounds that count for the record. */
export function comparedBlocks({ rounds }: JobRecord): Block[] {
  const t = words('record');
  const before = lastOf(rounds, 'before');
  const after = lastOf(rounds, 'after');
  const only = before ?? after;
  if (only === null) return [];
  const rows = compared(before, after);
  return [
    { kind: 'heading', level: 2, text: t('compared.title') },
    {
      kind: 'paragraph',
      text:
        before !== null && after !== null
          ? t('compared.which', { before: roundSaid(before.round), after: roundSaid(after.round) })
          : t('compared.whichBefore', { before: roundSaid(only.round) }),
    },
    {
      kind: 'table',
      caption: t('compared.caption', { unit: unit() }),
      groups: [
        { head: '', columns: 3 },
        { head: before === null ? t('compared.group.before') : roundSaid(before.round), columns: 3 },
        { head: after === null ? t('compared.group.after') : roundSaid(after.round), columns: 3 },
      ],
      columns: [
        { head: t('compared.dimension'), width: 25 },
        { head: t('compared.sheet'), width: 15, numeric: true },
        { head: t('compared.tolerance'), width: 16.5, numeric: true },
        ...[1, 2].flatMap(() => [
          { head: t('compared.read'), width: 15, numeric: true },
          { head: t('compared.deviation'), width: 22, numeric: true },
          { head: t('compared.state'), width: 26 },
        ]),
      ],
      rows: QUANTITY_ROWS.flatMap((quantity): PrintedRow[] => {
        const own = rows.filter(({ dimension }) => dimension.quantity === quantity);
        return own.length === 0
          ? []
          : [{ band: t(`compared.bands.${quantity}`) }, ...own.map((row) => ({ cells: cellsOf(row) }))];
      }),
    },
    { kind: 'paragraph', aside: true, text: t('compared.how') },
  ];
}

const QUANTITY_ROWS = [...QUANTITIES].sort((a, b) => Number(b === 'height') - Number(a === 'height'));

function cellsOf({ dimension, before, after }: Compared): PrintedCell[] {
  const t = words('record');
  const name = placeSaid(dimension);
  return [
    dimension.zero ? t('compared.zeroName', { name }) : name,
    bareMillimetres(dimension.nominal),
    `±${bareMillimetres(dimension.tolerance)}`,
    ...heldCells(before),
    ...heldCells(after),
  ];
}

function heldCells(held: Held | null): PrintedCell[] {
  if (held === null) return ['', '', words('record')('compared.notRead')];
  const { dimension, read, uncertainty } = held;
  return [
    bareMillimetres(read),
    `${signed(dimension.deviation)} ${uncertainty === null ? words('print')('notKnown') : `±${bareMillimetres(2 * uncertainty)}`}`,
    { text: stateSaid(held), strong: !dimension.within },
  ];
}

/** `in, 97 %`: in or out as read, and the probability that it truly is. */
export function stateSaid({ dimension: { quantity, zero, within }, sure }: Held): string {
  const t = words('record');
  if (quantity === 'height' && zero) return t(within ? 'compared.zero' : 'compared.zeroOut');
  if (sure === null) return t(within ? 'compared.withinUnsure' : 'compared.outUnsure');
  return t(within ? 'compared.within' : 'compared.out', { p: probability(sure) });
}
