import type { Column, Header } from './columns';
import type { Fault } from './fault';
import { CLOCK_ALLOWANCE, MAX_LABEL, type Range } from './limits';
import { nearest } from './nearest';
import { AMBIGUOUS_THOUSANDS, isDecimalComma, readNumber } from './number';
import type { TimeField } from './time';
import { readText } from './escape';

/** Characters of a field that a message repeats. */
const SHOWN = 80;

export interface FieldContext {
  /** True where a comma cannot be the separator, so that it may be a decimal comma. */
  decimalComma: boolean;
  readTime: (field: string) => TimeField;
  /** Epoch ms. */
  now: number;
  /** Extra allowance for times without an offset where the shop's zone is only a guess, ms. */
  zoneAllowance: number;
}

/** Reads the fields of one line by column; every problem is one fault that names line and column. */
export class FieldReader {
  /** True once the present line has a fault. */
  faulty = false;
  /** Whether any number had a decimal comma, and the fields that would then be read wrongly. */
  sawDecimalComma = false;
  readonly ambiguous: Fault[] = [];
  private line = 0;
  private fields: readonly string[] = [];
  private readonly wrongColumns = new Set<Column>();
  private readonly labels = new Map<string, string>();

  constructor(
    private readonly header: Header,
    private readonly context: FieldContext,
    private readonly fault: (fault: Fault) => void,
  ) {}

  start(line: number, fields: readonly string[]): void {
    this.line = line;
    this.fields = fields;
    this.faulty = false;
    if (this.wrongColumns.size > 0) this.wrongColumns.clear();
  }

  /** Names the column of the present line as wrong; only the first reason is kept. */
  wrong(column: Column, message: string): void {
    this.faulty = true;
    if (this.wrongColumns.has(column)) return;
    this.wrongColumns.add(column);
    this.fault({ line: this.line, column, message, value: shown(this.field(column)) });
  }

  failed(column: Column): boolean {
    return this.wrongColumns.has(column);
  }

  /** A column that states a unit must state millimetres. */
  unit(): void {
    const { unitAt } = this.header;
    const unit = unitAt === null ? '' : (this.fields[unitAt] ?? '').trim().toLowerCase();
    if (unit === '' || unit === 'mm' || unit === 'millimetre' || unit === 'millimeter') return;
    this.faulty = true;
    const message = `The unit "${shown(unit)}" is not millimetres. Convert the line to millimetres.`;
    this.fault({ line: this.line, column: 'unit', message, value: shown(unit) });
  }

  isEmpty(column: Column): boolean {
    return this.field(column) === '';
  }

  present(column: Column): boolean {
    if (!this.isEmpty(column)) return true;
    this.wrong(column, `The field is empty. Every line needs ${column}.`);
    return false;
  }

  label(column: Column): string | null {
    return this.present(column) ? this.optionalLabel(column) : null;
  }

  /** Text, shared between lines so that a large file stays small in memory. */
  optionalLabel(column: Column): string | null {
    const field = this.field(column);
    if (field === '') return null;
    const read = this.labelOf(field);
    if ('text' in read) return read.text;
    this.wrong(column, read.problem);
    return null;
  }

  /** What the text of a field that is not empty, without blanks around it, is as a label, or why it is none. */
  labelOf(field: string): { text: string } | { problem: string } {
    const known = this.labels.get(field);
    if (known !== undefined) return { text: known };
    // Longer by far than any label: not taken apart at all.
    const text = field.length > 4 * MAX_LABEL ? field : readText(field).normalize('NFC');
    if (text.length > MAX_LABEL)
      return { problem: `The text has ${text.length} characters; ${MAX_LABEL} are the most. Shorten it.` };
    if (/[\p{Cc}\u2028\u2029\ufffd]/u.test(text))
      return {
        problem: 'The text holds a line break or another character that cannot be printed. Remove it.',
      };
    const shared = this.labels.get(text) ?? text;
    this.labels.set(text, shared).set(field, shared);
    return { text: shared };
  }

  word<W extends string>(column: Column, options: readonly W[]): W | null {
    return this.present(column) ? this.optionalWord(column, options) : null;
  }

  /** One of the contract's words, large or small letters alike. */
  optionalWord<W extends string>(column: Column, options: readonly W[]): W | null {
    const field = this.field(column);
    if (field === '') return null;
    const exact = options.find((option) => option === field);
    if (exact !== undefined) return exact;
    const lower = field.toLowerCase();
    const alike = options.find((option) => option.toLowerCase() === lower);
    if (alike !== undefined) return alike;
    const close = nearest(field, options);
    const mend = close === null ? '' : ` Did you mean ${close}?`;
    this.wrong(column, `"${shown(field)}" is none of ${options.join(', ')}.${mend}`);
    return null;
  }

  optionalNumber(column: Column, range: Range | null, what: string, aboveLow = false): number | null {
    const field = this.field(column);
    if (field === '') return null;
    const read = readNumber(field, this.context.decimalComma);
    if ('problem' in read) {
      this.wrong(column, `"${shown(field)}" ${read.problem}.`);
      return null;
    }
    this.watchThousands(column, field);
    const { number } = read;
    if (range !== null && (number < range.low || number > range.high || (aboveLow && number === range.low))) {
      const limits = aboveLow
        ? `above ${range.low} and at most ${range.high}`
        : `from ${range.low} to ${range.high}`;
      this.wrong(
        column,
        `${field} cannot be ${what}: it must be ${limits} mm. Correct it, or remove the line.`,
      );
      return null;
    }
    return number;
  }

  optionalCount(column: Column, range: Range): number | null {
    const field = this.field(column);
    if (field === '') return null;
    const number = /^\d{1,9}$/.test(field) ? Number(field) : NaN;
    if (number >= range.low && number <= range.high) return number;
    this.wrong(
      column,
      `"${shown(field)}" is not a count. Write a whole number from ${range.low} to ${range.high}.`,
    );
    return null;
  }

  time(column: Column): number | null {
    if (!this.present(column)) return null;
    const field = this.field(column);
    const time = this.context.readTime(field);
    if ('problem' in time) {
      this.wrong(column, `"${shown(field)}" ${time.problem}.`);
      return null;
    }
    const allowance = CLOCK_ALLOWANCE + (time.zoned ? 0 : this.context.zoneAllowance);
    if (time.at > this.context.now + allowance) {
      this.wrong(column, `${field} is in the future. Correct the date, or the clock of the device.`);
      return null;
    }
    return time.at;
  }

  /** `1.310` beside decimal commas may mean 1310: such a file is refused rather than guessed at. */
  private watchThousands(column: Column, field: string): void {
    if (!this.context.decimalComma) return;
    if (isDecimalComma(field)) this.sawDecimalComma = true;
    else if (AMBIGUOUS_THOUSANDS.test(field)) {
      const message = `"${field}" can be read in two ways, since other numbers of the file have a decimal comma. Write ${field.replace('.', '')} or ${field.replace('.', ',')}.`;
      this.ambiguous.push({ line: this.line, column, message, value: field });
    }
  }

  private field(column: Column): string {
    const index = this.header.at[column];
    return index === undefined ? '' : (this.fields[index] ?? '').trim();
  }
}

/** Of a field what a message repeats. */
const shown = (field: string) => (field.length <= SHOWN ? field : `${field.slice(0, SHOWN)}…`);
