import { isPoint, lengthEnds } from '../dimension';
import { CAUSES, GAUGE_KINDS, QUANTITIES, SECTIONS, SIDES, STAGES, type Quantity, type Side } from '../types';
import type { Column, Header } from './columns';
import type { Draft } from './draft';
import type { Fault } from './fault';
import { FieldReader, type FieldContext } from './field';
import { CLEARANCE_RANGE, COUNT_RANGE, STATION_RANGE, TOLERANCE_RANGE, VALUE_RANGE } from './limits';

/** Reads one line after another; what is wrong with a line goes to `fault`. */
export class RowReader {
  private readonly read: FieldReader;
  /** Columns whose absence was named once, so that it is not named again for every line. */
  private readonly named = new Set<Column>();

  constructor(
    private readonly header: Header,
    context: FieldContext,
    private readonly fault: (fault: Fault) => void,
  ) {
    this.read = new FieldReader(header, context, fault);
  }

  /** The line as a draft, or null where it has a fault. */
  draft(line: number, fields: readonly string[]): Draft | null {
    const { read } = this;
    read.start(line, fields);
    if (!this.isWhole(line, fields)) return null;
    read.unit();
    const quantity = read.word('quantity', QUANTITIES);
    const point = read.label('point');
    const draft = {
      line,
      job: read.label('job'),
      sheet: read.optionalLabel('sheet'),
      stage: read.word('stage', STAGES),
      attempt: read.optionalCount('attempt', COUNT_RANGE) ?? 1,
      takenAt: read.time('taken_at'),
      technician: read.label('technician'),
      gauge: read.label('gauge'),
      gaugeKind: read.optionalWord('gauge_kind', GAUGE_KINDS),
      setup: read.label('setup'),
      quantity,
      point,
      side: this.side(quantity),
      section: read.optionalWord('section', SECTIONS),
      station: read.optionalNumber('station_mm', STATION_RANGE, 'a station'),
      zero: this.zero(),
      nominal: this.millimetres('nominal_mm', quantity),
      tolerance: read.optionalNumber('tolerance_mm', TOLERANCE_RANGE, 'a tolerance', true),
      clearance: read.optionalNumber('clearance_mm', CLEARANCE_RANGE, 'a clearance'),
      repeat: read.optionalCount('repeat', COUNT_RANGE),
      value: read.present('value_mm') ? this.millimetres('value_mm', quantity) : null,
      cause: read.optionalWord('cause', CAUSES),
    };
    if (quantity !== null && point !== null) this.shape(quantity, point, draft);
    return read.faulty ? null : settled(draft);
  }

  /** What a line whose job is written so is of; null where it is to be read as a whole, to say what is wrong. */
  jobOf(field: string): string | null {
    const trimmed = field.trim();
    if (trimmed === '') return null;
    const read = this.read.labelOf(trimmed);
    return 'text' in read ? read.text : null;
  }

  get sawDecimalComma(): boolean {
    return this.read.sawDecimalComma;
  }

  /** How many numbers so far could be read in two ways. */
  get doubts(): number {
    return this.read.ambiguous.length;
  }

  /** Numbers that can be read in two ways, given how the other numbers of the file are written. */
  ambiguousNumbers(sawDecimalComma: boolean): Fault[] {
    return sawDecimalComma ? this.read.ambiguous : [];
  }

  /** The right number of fields; empty ones beyond the header come from spreadsheets and do no harm. */
  private isWhole(line: number, fields: readonly string[]): boolean {
    const { width } = this.header;
    if (fields.length === width) return true;
    if (fields.length > width && fields.slice(width).every((field) => field.trim() === '')) return true;
    const mend =
      fields.length < width
        ? 'Add the missing fields; an empty field still needs its separator.'
        : 'Remove the extra fields, or put a field that holds the separator in double quotes.';
    const message = `The line has ${fields.length} fields where the header has ${width}. ${mend}`;
    this.fault({ line, column: null, message, value: null });
    return false;
  }

  private side(quantity: Quantity | null): Side | null {
    if (quantity === null || quantity === 'height') return this.read.optionalWord('side', SIDES);
    if (this.read.isEmpty('side')) return null;
    this.read.wrong('side', `A ${quantity} has no side. Leave the field empty.`);
    return null;
  }

  private zero(): boolean | null {
    const word = this.read.optionalWord('zero', ['yes', 'no'] as const);
    return word === null ? null : word === 'yes';
  }

  private millimetres(column: 'value_mm' | 'nominal_mm', quantity: Quantity | null): number | null {
    const range = quantity === null ? null : VALUE_RANGE[quantity];
    return this.read.optionalNumber(column, range, `a ${quantity ?? 'length'}`);
  }

  /** What each quantity needs, and what it cannot have. */
  private shape(
    quantity: Quantity,
    point: string,
    draft: { side: unknown; station: unknown; zero: unknown },
  ) {
    const { read } = this;
    if (quantity === 'length') {
      const ends = lengthEnds(point);
      if (ends === null) {
        read.wrong('point', `"${point}" is no length: it needs both ends, such as K-N.`);
      } else if (ends[0].side !== null && ends[0].side === ends[1].side && ends[0].point === ends[1].point) {
        read.wrong('point', `"${point}" has the same point at both ends.`);
      }
    } else if (!isPoint(point)) {
      read.wrong(
        'point',
        `"${point}" is not one point of the sheet. A ${quantity} is read at one, such as K.`,
      );
    }
    if (quantity === 'height') {
      if (draft.side === null) this.needed('side', 'A height needs its side, L or R.');
    }
    if (quantity !== 'length') {
      if (draft.station === null)
        this.needed('station_mm', `A ${quantity} needs its station along the vehicle.`);
    } else if (draft.zero === true) {
      read.wrong('zero', 'A length has no zero station. Leave the field empty or write no.');
    }
  }

  /** A field that this line needs; where the file has no such column that is said once. */
  private needed(column: Column, message: string): void {
    if (this.read.failed(column)) return;
    if (this.header.at[column] !== undefined) return this.read.wrong(column, message);
    this.read.faulty = true;
    if (this.named.has(column)) return;
    this.named.add(column);
    const line = this.header.line;
    this.fault({ line, column, message: `The column ${column} is missing. ${message}`, value: null });
  }
}

type Open = { [K in keyof Draft]: Draft[K] | null };

/** The draft of a line without faults; stations and clearances count only where the quantity has them. */
function settled(open: Open): Draft | null {
  const { line, job, stage, attempt, takenAt, technician, gauge, setup, quantity, point, value } = open;
  if (line === null || job === null || stage === null || attempt === null || takenAt === null) return null;
  if (technician === null || gauge === null || setup === null) return null;
  if (quantity === null || point === null || value === null) return null;
  const station = quantity === 'length' ? null : open.station;
  const zero = quantity === 'length' ? false : open.zero;
  const clearance = quantity === 'height' ? open.clearance : 0;
  return {
    line,
    job,
    sheet: open.sheet,
    stage,
    attempt,
    takenAt,
    technician,
    gauge,
    gaugeKind: open.gaugeKind,
    setup,
    quantity,
    point,
    side: open.side,
    section: open.section,
    station,
    zero,
    nominal: open.nominal,
    tolerance: open.tolerance,
    clearance,
    repeat: open.repeat,
    value,
    cause: open.cause,
  };
}
