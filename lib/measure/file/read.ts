import type { Reading } from '../types';
import { refuseTooLarge, textBytes, type ByteCount } from './bytes';
import { readHeader, type Header } from './columns';
import { completed } from './complete';
import { Lines } from './cross';
import type { Draft } from './draft';
import type { Fault } from './fault';
import { KnownSheets } from './known-sheets';
import type { FileSource, MeasurementFile, ReadOptions } from './options';
import { readRecords } from './records';
import { Refusal } from './refusal';
import { RowReader } from './row';
import { checkClearance } from './rules/rounds';
import { checkGauges, checkRepeats, checkSetups } from './rules/setups';
import { checkLengths } from './rules/lengths';
import { checkJobSheets, checkKnownSheets, checkSheets } from './rules/sheets';
import { checkZeroStations } from './rules/zero-stations';
import type { Separator } from './separator';
import { summarise } from './summary';
import { timeReader } from './time';

/** The most that a time without an offset can be wrong by where the shop's zone is not known, ms. */
const UNKNOWN_ZONE = 14 * 60 * 60 * 1000;

/**
 * Reads a measurement file: CSV in UTF-8, one reading a line. Nothing is half read: where there is a fault,
 * `readings` is empty and every faulty line is named, with the way to mend it.
 *
 * Throws a RangeError for a time zone that does not exist, and whatever the source itself throws; what is wrong
 * with the file is never thrown.
 */
export async function readMeasurementFile(
  source: FileSource,
  options: ReadOptions = {},
): Promise<MeasurementFile> {
  const reader = new FileReader(options);
  const count: ByteCount = { bytes: 0 };
  try {
    refuseTooLarge(options.bytes ?? sizeOf(source));
    await readRecords(textBytes(source, count), (line, fields, separator) =>
      reader.record(line, fields, separator),
    );
    reader.finish();
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    reader.faults.push(error.fault);
  }
  return reader.result(count.bytes);
}

/** The size of what is in memory already; 0 where it is still to come. */
const sizeOf = (source: FileSource) =>
  typeof source === 'string' || source instanceof Uint8Array ? source.length : 0;

class FileReader {
  readonly faults: Fault[] = [];
  private readonly drafts: Draft[] = [];
  private readonly doubtfulJobs = new Set<string | null>();
  private readonly readTime: ReturnType<typeof timeReader>;
  private header: Header | null = null;
  private rows: RowReader | null = null;
  private separator: Separator = ',';
  private lines = 0;

  constructor(private readonly options: ReadOptions) {
    this.readTime = timeReader(options.timeZone ?? 'UTC');
  }

  record(line: number, fields: readonly string[], separator: Separator): void {
    this.lines++;
    if (this.header === null) {
      this.begin(readHeader(line, fields), separator);
      return;
    }
    if (this.rows === null) return;
    const draft = this.rows.draft(line, fields);
    if (draft !== null) this.drafts.push(draft);
    else this.doubtfulJobs.add(this.jobOf(fields));
  }

  /** What can only be seen once all lines are read. */
  finish(): void {
    if (this.header === null)
      throw new Refusal('The file is empty. Load a file with a header and a line for each reading.');
    if (this.rows === null) return;
    if (this.lines === 1) throw new Refusal('The file has a header but no readings.', this.header.line);
    this.faults.push(...this.rows.ambiguousNumbers());
    const lines = new Lines(this.drafts, this.doubtfulJobs, (fault) => this.faults.push(fault));
    checkJobSheets(lines);
    checkSetups(lines);
    checkGauges(lines);
    checkRepeats(lines);
    const known = new KnownSheets(this.options.knownSheets);
    checkKnownSheets(lines, known);
    checkLengths(lines, known);
    checkSheets(lines);
    checkClearance(lines);
    checkZeroStations(lines);
  }

  result(bytes: number): MeasurementFile {
    this.faults.sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
    const readings: Reading[] = this.faults.length === 0 ? completed(this.drafts) : [];
    const summary = summarise(this.drafts, {
      name: this.options.name ?? 'measurement file',
      bytes,
      lines: this.lines,
      separator: this.separator,
      decimalComma: this.rows?.sawDecimalComma ?? false,
      ignoredColumns: this.header?.ignored ?? [],
      numbered: this.header?.at.repeat !== undefined,
    });
    return { readings, faults: this.faults, summary };
  }

  private begin(header: Header, separator: Separator): void {
    this.header = header;
    this.separator = separator;
    this.faults.push(...header.faults);
    if (header.faults.length > 0) return;
    const context = {
      decimalComma: separator !== ',',
      readTime: this.readTime,
      now: this.options.now ?? Date.now(),
      zoneAllowance: this.options.timeZone === undefined ? UNKNOWN_ZONE : 0,
    };
    this.rows = new RowReader(header, context, (fault) => this.faults.push(fault));
  }

  private jobOf(fields: readonly string[]): string | null {
    const job = fields[this.header?.at.job ?? -1]?.trim() ?? '';
    return job === '' ? null : job;
  }
}
