import type { Reading } from '@/lib/measure/types';
import { KnownSheets } from '../known-sheets';
import { LineTable } from './line-table';
import type { ReadingTable } from './reading-table';
import { soundReadings } from './settle';

/** The table of readings that were accepted already, of several files together, say. */
export function tableOf(readings: Iterable<Reading>): ReadingTable {
  const table = new LineTable();
  for (const reading of readings)
    table.add(reading.line, table.cellsOf(reading), reading.takenAt, reading.repeat, reading.value);
  const settled = soundReadings(table, new KnownSheets(undefined), true);
  if (settled === null) throw new RangeError('Accepted readings contradict each other.');
  return settled;
}
