import type { Column, Header } from '../columns';
import type { Draft } from '../draft';
import type { FieldContext } from '../field';
import { CLOCK_ALLOWANCE, COUNT_RANGE, VALUE_RANGE } from '../limits';
import type { Cells, LineTable } from '../table/line-table';
import type { RowReader } from '../row';
import { thing } from '../table/names';
import { ByteKeys } from './byte-keys';
import type { PlainLine } from './plain-line';
import { plainCount, plainNumber } from './plain-number';
import { PlainTimes } from './plain-time';

/** Columns that are looked up together: as they are written they were read before, and without a fault. */
const GROUPS = {
  job: ['job'],
  mark: ['sheet', 'stage', 'attempt'],
  hand: ['technician', 'gauge', 'gauge_kind'],
  setup: ['setup'],
  stated: ['quantity', 'point', 'side', 'section', 'station_mm', 'zero', 'nominal_mm', 'tolerance_mm'],
  aside: ['clearance_mm', 'cause'],
} as const satisfies Record<string, readonly Column[]>;

/** More different texts than this are not kept: they do not recur. */
const MOST_KEPT = 200_000;

/** Fields of a group in the file, and what their texts stood for. */
class Group {
  private readonly known = new ByteKeys();
  private readonly fields: readonly number[];
  private readonly isRow: boolean;
  /** Fields that stand apart, put side by side. */
  private beside = new Uint8Array(64);

  constructor(columns: readonly Column[], at: Header['at']) {
    this.fields = columns.flatMap((column) => at[column] ?? []).sort((a, b) => a - b);
    this.isRow =
      this.fields.length > 0 && this.fields.every((field, index) => field === (this.fields[0] ?? 0) + index);
  }

  /** −1 where it was not read before. */
  find(line: PlainLine): number {
    if (!this.isRow) return this.known.find(this.beside, 0, this.putBeside(line));
    return this.known.find(line.bytes, this.from(line), this.to(line));
  }

  learn(line: PlainLine, number: number): void {
    if (this.known.size >= MOST_KEPT || this.find(line) >= 0) return;
    if (!this.isRow) this.known.learn(this.beside, 0, this.putBeside(line), number);
    else this.known.learn(line.bytes, this.from(line), this.to(line), number);
  }

  private from(line: PlainLine): number {
    return line.outerFrom[this.fields[0] ?? 0] ?? 0;
  }

  private to(line: PlainLine): number {
    return line.outerTo[this.fields[this.fields.length - 1] ?? 0] ?? 0;
  }

  /** @returns where they end; each ends with a zero, which is no character of a file. */
  private putBeside(line: PlainLine): number {
    let end = 0;
    for (const field of this.fields) {
      const [from, to] = [line.outerFrom[field] ?? 0, line.outerTo[field] ?? 0];
      if (end + to - from >= this.beside.length) {
        const more = new Uint8Array(2 * (end + to - from + 1));
        more.set(this.beside);
        this.beside = more;
      }
      for (let at = from; at < to; at++) this.beside[end++] = line.bytes[at] ?? 0;
      this.beside[end++] = 0;
    }
    return end;
  }
}

/**
 * Takes lines into the table whose fields are all written plainly or as on an earlier line: nearly all of a large
 * file. Any other line is left to `RowReader`, from which this learns what texts stand for.
 */
export class PlainRows {
  /** Whether any value had a decimal comma. */
  sawDecimalComma = false;
  private readonly job: Group;
  private readonly mark: Group;
  private readonly hand: Group;
  private readonly setup: Group;
  private readonly stated: Group;
  /** Of a length or a centerline the clearance does not count, so what an aside stands for is another. */
  private readonly asideOfHeight: Group;
  private readonly asideOfOther: Group;
  private readonly times = new PlainTimes();
  private readonly cells: Cells = { place: 0, hand: 0, setup: 0, stated: 0, aside: 0 };
  private readonly jobField: number;
  private readonly takenAtField: number;
  private readonly valueField: number;
  private readonly repeatField: number | null;
  private readonly latest: number;

  constructor(
    private readonly header: Header,
    private readonly context: FieldContext,
    private readonly table: LineTable,
    private readonly rows: Pick<RowReader, 'jobOf'>,
  ) {
    const { at } = header;
    this.job = new Group(GROUPS.job, at);
    this.mark = new Group(GROUPS.mark, at);
    this.hand = new Group(GROUPS.hand, at);
    this.setup = new Group(GROUPS.setup, at);
    this.stated = new Group(GROUPS.stated, at);
    this.asideOfHeight = new Group(GROUPS.aside, at);
    this.asideOfOther = new Group(GROUPS.aside, at);
    this.jobField = at.job ?? 0;
    this.takenAtField = at.taken_at ?? 0;
    this.valueField = at.value_mm ?? 0;
    this.repeatField = at.repeat ?? null;
    this.latest = context.now + CLOCK_ALLOWANCE;
  }

  /** @returns false where the line was not taken: it is new in some way, or has a fault. */
  take(number: number, line: PlainLine): boolean {
    const { cells } = this;
    if (line.count !== this.header.width || this.header.unitAt !== null) return false;
    const stated = this.stated.find(line);
    let job = this.job.find(line);
    const mark = this.mark.find(line);
    const hand = this.hand.find(line);
    const setup = this.setup.find(line);
    if (stated < 0 || mark < 0 || hand < 0 || setup < 0) return false;
    const { quantity } = thing(this.table.stated.all, stated);
    const aside = (quantity === 'height' ? this.asideOfHeight : this.asideOfOther).find(line);
    if (aside < 0) return false;
    const takenAt = this.takenAt(line);
    const value = this.valueOf(line);
    const { low, high } = VALUE_RANGE[quantity];
    // NaN is not within either.
    if (!(takenAt <= this.latest && value >= low && value <= high)) return false;
    const repeat = this.repeat(line);
    if (repeat < 0) return false;
    if (job < 0) job = this.newJob(line);
    if (job < 0) return false;
    cells.place = this.placeOf(job, mark);
    cells.hand = hand;
    cells.setup = setup;
    cells.stated = stated;
    cells.aside = aside;
    this.table.add(number, cells, takenAt, repeat, value);
    return true;
  }

  /** Keeps what the texts of a line stood for that was read otherwise. */
  learn(line: PlainLine, cells: Cells, { quantity }: Draft): void {
    if (line.count !== this.header.width) return;
    const place = thing(this.table.places.all, cells.place);
    this.job.learn(line, place.job);
    this.mark.learn(line, place.mark);
    this.hand.learn(line, cells.hand);
    this.setup.learn(line, cells.setup);
    this.stated.learn(line, cells.stated);
    (quantity === 'height' ? this.asideOfHeight : this.asideOfOther).learn(line, cells.aside);
  }

  /** Of a line in which nothing else is new: a new job begins every few lines. −1 where it is not written as one. */
  private newJob(line: PlainLine): number {
    const name = this.rows.jobOf(line.field(this.jobField));
    if (name === null) return -1;
    const job = this.table.jobs.of(name);
    this.job.learn(line, job);
    return job;
  }

  /** Mostly that of the line before. */
  private placeOf(job: number, mark: number): number {
    const before = this.table.places.all[this.cells.place];
    if (before?.job === job && before.mark === mark) return this.cells.place;
    return this.table.placeAtMark(job, mark);
  }

  private takenAt(line: PlainLine): number {
    const from = line.from[this.takenAtField] ?? 0;
    const to = line.to[this.takenAtField] ?? 0;
    const at = this.times.read(line.bytes, from, to);
    if (!Number.isNaN(at)) return at;
    const time = this.context.readTime(line.field(this.takenAtField).trim());
    // Of a time that is a little ahead the row reader knows whether it is allowed.
    return 'at' in time ? time.at : Number.NaN;
  }

  private valueOf(line: PlainLine): number {
    const from = line.from[this.valueField] ?? 0;
    const to = line.to[this.valueField] ?? 0;
    const { decimalComma } = this.context;
    const value = plainNumber(line.bytes, from, to, decimalComma);
    if (decimalComma && !this.sawDecimalComma)
      this.sawDecimalComma = line.field(this.valueField).includes(',');
    return value;
  }

  /** 0 where it is not numbered, −1 where it is not written plainly. */
  private repeat(line: PlainLine): number {
    if (this.repeatField === null) return 0;
    const from = line.from[this.repeatField] ?? 0;
    const to = line.to[this.repeatField] ?? 0;
    if (from === to) return 0;
    const count = plainCount(line.bytes, from, to);
    return count >= COUNT_RANGE.low ? count : -1;
  }
}
