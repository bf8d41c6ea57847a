import type { Draft } from '../draft';
import { Lines } from '../cross';
import type { Fault } from '../fault';
import { KnownSheets } from '../known-sheets';
import type { ReadOptions } from '../options';
import { checkLengths } from '../rules/lengths';
import { checkClearance } from '../rules/rounds';
import { checkGauges, checkRepeats, checkSetups } from '../rules/setups';
import { checkJobSheets, checkKnownSheets, checkSheets } from '../rules/sheets';
import { checkZeroStations } from '../rules/zero-stations';
import { byJob, kindOfGauges, sheetOfJobs } from './by-job';
import { jobsAreSound } from './jobs-are-sound';
import { LineDraft } from './line-draft';
import type { LineTable } from './line-table';
import { ReadingTable } from './reading-table';
import { sayingsOf, SheetValues } from './sheet-values';

/** What the lines of a file say together, once all are read. */
export interface Settled {
  faults: Fault[];
  /** Null where there is any fault, before or now. */
  readings: ReadingTable | null;
}

/**
 * Holds the lines to the rules across lines. Of a file whose lines are all sound the rules are only asked whether
 * they would say anything; else they are applied, and name every line.
 * @param faulty whether any line was refused by itself already.
 * @param doubtfulJobs the jobs of such lines.
 */
export function settle(
  table: LineTable,
  known: ReadOptions['knownSheets'],
  faulty: boolean,
  doubtfulJobs: Set<string | null>,
): Settled {
  const sheets = new KnownSheets(known);
  const readings = faulty ? null : soundReadings(table, sheets);
  if (readings !== null) return { faults: [], readings };
  const faults: Fault[] = [];
  applyRules(new Lines(draftsOf(table), doubtfulJobs, (fault) => faults.push(fault)), sheets);
  const refused = faulty || faults.length > 0;
  return { faults, readings: refused ? null : soundReadings(table, sheets, true) };
}

function draftsOf(table: LineTable): Draft[] {
  return Array.from({ length: table.size }, (_, at) => new LineDraft(table, at));
}

/**
 * The readings of lines of which no rule across lines refuses one; else null.
 * @param surely true where the rules were applied and refused nothing.
 */
export function soundReadings(table: LineTable, known: KnownSheets, surely = false): ReadingTable | null {
  const lines = byJob(table);
  const sheets = sheetOfJobs(table);
  const kinds = kindOfGauges(table);
  if (sheets === null || kinds === null) return null;
  const values = new SheetValues(table, known, sayingsOf(table, lines, sheets));
  if (!surely && !(values.sound && jobsAreSound(table, lines, sheets, values))) return null;
  return new ReadingTable(table, lines, sheets, kinds, values);
}

function applyRules(lines: Lines, known: KnownSheets): void {
  checkJobSheets(lines);
  checkSetups(lines);
  checkGauges(lines);
  checkRepeats(lines);
  checkKnownSheets(lines, known);
  checkLengths(lines, known);
  checkSheets(lines);
  checkClearance(lines);
  checkZeroStations(lines);
}
