import { checkLengths } from './checks/lengths';
import { checkMirror } from './checks/mirror';
import { checkOrder } from './checks/order';
import { checkPoints } from './checks/points';
import { checkSizes } from './checks/sizes';
import { checkZeroStations } from './checks/zero-stations';
import { remark, type Remark } from './remark';
import type { SheetRows } from './rows';

/** Everything that speaks against a sheet as it is entered, faults first. Rows are counted as they stand here. */
export function checkRows(rows: SheetRows): Remark[] {
  if (rows.points.length + rows.lengths.length === 0) return [remark('fault', 'nothing', null)];
  const found = [
    ...checkPoints(rows.points),
    ...checkZeroStations(rows.points),
    ...checkLengths(rows),
    ...checkMirror(rows.points),
    ...checkOrder(rows.points),
    ...checkSizes(rows),
  ];
  return [...found.filter(isFault), ...found.filter((one) => !isFault(one))];
}

export const isFault = ({ level }: Pick<Remark, 'level'>): boolean => level === 'fault';

/** Remarks with their rows as they were typed, empty ones counted. */
export function remarksAt(
  remarks: readonly Remark[],
  places: { points: readonly number[]; lengths: readonly number[] },
): Remark[] {
  return remarks.map((one) =>
    one.at === null
      ? one
      : { ...one, at: { ...one.at, row: places[one.at.block][one.at.row] ?? one.at.row } },
  );
}
