import { remarkKey } from '@/app/sheets/_parts/remark-words';
import { lengthFrom } from '@/app/sheets/_parts/typed-lengths';
import {
  checkRows,
  expandRows,
  isFault,
  readTyped,
  rowsOf,
  type Remark,
  type SheetContent,
  type SheetRows,
} from '@/lib/measure/sheet';
import type { SheetForm } from './form';

export interface Judged {
  content: SheetContent;
  faults: Remark[];
  /** Doubts that the sheet has not had before. */
  doubts: Remark[];
}

/** What a sheet as it was sent comes to, and what speaks against it. */
export function judge(
  { typed, units }: Pick<SheetForm, 'typed' | 'units'>,
  tolerance: number,
  before: SheetContent | null,
): Judged {
  const read = readTyped(typed, { number: lengthFrom(units), tolerance });
  const remarks = [...read.remarks, ...checkRows(read)];
  const known = new Set(before === null ? [] : doubtsOf(rowsOf(before)));
  return {
    content: expandRows(read),
    faults: remarks.filter(isFault),
    doubts: remarks.filter((one) => !isFault(one) && !known.has(remarkKey(one))),
  };
}

/** The doubts that a sheet as it stands has, by `remarkKey`: whoever corrects something else need not answer for them. */
export const doubtsOf = (rows: SheetRows): string[] =>
  checkRows(rows)
    .filter((one) => !isFault(one))
    .map(remarkKey);
