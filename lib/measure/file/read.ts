import { refuseTooLarge, textBytes, type ByteCount } from './bytes';
import { readHeader, type Header } from './columns';
import type { Fault } from './fault';
import type { FileSource, MeasurementFile, ReadOptions } from './options';
import type { PlainLine } from './plain/plain-line';
import { PlainRows } from './plain/plain-rows';
import { readRecords, type OnRecord } from './records';
import { Refusal } from './refusal';
import { RowReader } from './row';
import type { Separator } from './separator';
import { LineCounts, summarise } from './summary';
import { kindOfGauges } from './table/by-job';
import type { BeingRead } from './table/jobs-ahead';
import { LineTable, UNNUMBERED } from './table/line-table';
import type { ReadingTable } from './table/reading-table';
import { settle } from './table/settle';
import { timeReader } from './time';

/** The most that a time without an offset can be wrong by where the shop's zone is not known, ms. */
const UNKNOWN_ZONE = 14 * 60 * 60 * 1000;

/**
 * A measurement file as a table of its readings, for files of any size; null where there is any fault, or where lines
 * were taken out of it while it was read.
 */
export interface TabledFile extends Omit<MeasurementFile, 'readings'> {
  readings: ReadingTable | null;
}

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
  const { readings, ...rest } = await tabulateMeasurementFile(source, options);
  return { ...rest, readings: readings === null ? [] : [...readings] };
}

/**
 * The same, with the readings left in some 45 bytes each until they are asked for.
 * @param begun given the file as it is being read, for `JobsAhead`.
 */
export async function tabulateMeasurementFile(
  source: FileSource,
  options: ReadOptions = {},
  begun: (file: BeingRead) => void = () => undefined,
): Promise<TabledFile> {
  const reader = new FileReader(options);
  begun(reader);
  const count: ByteCount = { bytes: 0 };
  try {
    refuseTooLarge(options.bytes ?? sizeOf(source));
    await readRecords(textBytes(source, count), reader);
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

class FileReader implements OnRecord, BeingRead {
  readonly faults: Fault[] = [];
  readonly table = new LineTable();
  private readings: ReadingTable | null = null;
  private readonly doubtfulJobs = new Set<string | null>();
  private readonly readTime: ReturnType<typeof timeReader>;
  private header: Header | null = null;
  private rows: RowReader | null = null;
  private plainRows: PlainRows | null = null;
  private separator: Separator = ',';
  private lines = 0;
  private readonly counts = new LineCounts();
  private takenOut = false;

  constructor(private readonly options: ReadOptions) {
    this.readTime = timeReader(options.timeZone ?? 'UTC');
  }

  get sound(): boolean {
    return this.faults.length === 0;
  }

  takeOut(end: number): LineTable {
    const part = this.table.takeOut(end);
    this.counts.add(part, this.numbered);
    this.takenOut = true;
    return part;
  }

  plain(line: number, fields: PlainLine): boolean {
    if (this.plainRows?.take(line, fields) !== true) return false;
    this.lines++;
    return true;
  }

  record(line: number, fields: readonly string[], separator: Separator, plain: PlainLine | null): void {
    this.lines++;
    if (this.header === null) {
      this.begin(readHeader(line, fields), separator);
      return;
    }
    if (this.rows === null) return;
    const doubts = this.rows.doubts;
    const draft = this.rows.draft(line, fields);
    if (draft === null) {
      this.doubtfulJobs.add(this.jobOf(fields));
      return;
    }
    const cells = this.table.cellsOf(draft);
    this.table.add(line, cells, draft.takenAt, draft.repeat ?? UNNUMBERED, draft.value);
    // What may be read in two ways is to be named on every line.
    if (plain !== null && this.rows.doubts === doubts) this.plainRows?.learn(plain, cells, draft);
  }

  /** What can only be seen once all lines are read. */
  finish(): void {
    if (this.header === null)
      throw new Refusal('The file is empty. Load a file with a header and a line for each reading.');
    if (this.rows === null) return;
    if (this.lines === 1) throw new Refusal('The file has a header but no readings.', this.header.line);
    this.faults.push(...this.rows.ambiguousNumbers(this.sawDecimalComma));
    // Whoever took lines out holds them to the rules.
    if (this.takenOut) return;
    const { faults, readings } = settle(
      this.table,
      this.options.knownSheets,
      this.faults.length > 0,
      this.doubtfulJobs,
    );
    for (const fault of faults) this.faults.push(fault);
    this.readings = readings;
  }

  result(bytes: number): TabledFile {
    this.faults.sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
    const { readings } = this;
    const facts = {
      name: this.options.name ?? 'measurement file',
      bytes,
      lines: this.lines,
      separator: this.separator,
      decimalComma: this.sawDecimalComma,
      ignoredColumns: this.header?.ignored ?? [],
    };
    this.counts.add(this.table, this.numbered);
    const kinds = this.sound ? kindOfGauges(this.table) : null;
    const summary = summarise(this.table, this.counts, (gauge) => kinds?.[gauge] ?? null, facts);
    return { readings, faults: this.faults, summary };
  }

  private get numbered(): boolean {
    return this.header?.at.repeat !== undefined;
  }

  private get sawDecimalComma(): boolean {
    return this.rows?.sawDecimalComma === true || this.plainRows?.sawDecimalComma === true;
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
    this.plainRows = new PlainRows(header, context, this.table, this.rows);
  }

  private jobOf(fields: readonly string[]): string | null {
    const job = fields[this.header?.at.job ?? -1]?.trim() ?? '';
    return job === '' ? null : job;
  }
}
