import type { Reading } from '../types';
import { COLUMNS, type Column } from './columns';
import { writeText } from './escape';

/** Writes readings as a measurement file: RFC 4180, UTF-8, comma, CRLF, times in UTC. Reading it gives the same. */
export function writeMeasurementFile(readings: Iterable<Reading>): string {
  return [...measurementFileLines(readings)].join('');
}

/** The same, line by line with the line ends, for files too large to hold. */
export function* measurementFileLines(readings: Iterable<Reading>): Generator<string> {
  yield `${COLUMNS.join(',')}\r\n`;
  for (const reading of readings) {
    const fields = fieldsOf(reading);
    yield `${COLUMNS.map((column) => quoted(fields[column])).join(',')}\r\n`;
  }
}

function fieldsOf(reading: Reading): Record<Column, string> {
  const isHeight = reading.quantity === 'height';
  return {
    job: writeText(reading.job),
    sheet: writeText(reading.sheet ?? ''),
    stage: reading.stage,
    attempt: String(reading.attempt),
    taken_at: new Date(reading.takenAt).toISOString(),
    technician: writeText(reading.technician),
    gauge: writeText(reading.gauge),
    gauge_kind: reading.gaugeKind ?? '',
    setup: writeText(reading.setup),
    quantity: reading.quantity,
    point: writeText(reading.point),
    side: reading.side ?? '',
    section: reading.section ?? '',
    station_mm: reading.station === null ? '' : plain(reading.station),
    zero: reading.quantity === 'length' ? '' : reading.zero ? 'yes' : 'no',
    nominal_mm: plain(reading.nominal),
    tolerance_mm: plain(reading.tolerance),
    clearance_mm: isHeight ? plain(reading.clearance) : '',
    repeat: String(reading.repeat),
    value_mm: plain(reading.value),
    cause: reading.cause ?? '',
  };
}

/** All digits of a number without an exponent, which only numbers below 0.000001 are printed with. */
function plain(number: number): string {
  const text = String(number);
  const [, sign = '', first, rest = '', exponent] = /^(-?)(\d)(?:\.(\d+))?e-(\d+)$/.exec(text) ?? [];
  if (first === undefined) return text;
  return `${sign}0.${'0'.repeat(Number(exponent) - 1)}${first}${rest}`;
}

function quoted(field: string): string {
  return /[",\r\n]/.test(field) ? `"${field.replaceAll('"', '""')}"` : field;
}
