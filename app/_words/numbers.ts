import { millimetresToInches } from '@/lib/measure/units';
import { speech } from './speech/heard';
import { localeOf, type Speech } from './speech/speech';

const NO_BREAK = '\u00a0';
const MINUS = '\u2212';

const formats = new Map<string, Intl.NumberFormat>();

/** Digits in the reader's language; of whole numbers the thousands are set apart, of measured ones not. */
function digitsOf(value: number, digits: number, to: Speech, grouping: boolean): string {
  const key = `${to.language} ${digits} ${grouping}`;
  const format =
    formats.get(key) ??
    new Intl.NumberFormat(localeOf(to), {
      minimumFractionDigits: digits,
      maximumFractionDigits: digits,
      useGrouping: grouping,
    });
  formats.set(key, format);
  return format.format(value);
}

function fixed(value: number, digits: number, to: Speech): string {
  // Rounded as toFixed does, so that what is shown does not depend on the language.
  const rounded = Number(Math.abs(value).toFixed(digits));
  const text = digitsOf(rounded, digits, to, false);
  return value < 0 && rounded !== 0 ? MINUS + text : text;
}

/** An inch needs two digits more to say the same. */
const MORE_DIGITS_OF_INCHES = 2;

/** A length in the reader's units, and how many digits say it as well as these of millimetres do. */
const inUnits = (value: number, digits: number, { units }: Speech): [number, number] =>
  units === 'mm' ? [value, digits] : [millimetresToInches(value), digits + MORE_DIGITS_OF_INCHES];

/** The reader's unit of length: `mm` or `in`. */
export const unit = (to: Speech = speech()): string => to.units;

/** A length given in millimetres as a number of the reader's units. */
export const inReadersUnits = (value: number, to: Speech = speech()): number =>
  to.units === 'mm' ? value : millimetresToInches(value);

/** A length given in millimetres, with the reader's unit: `307.5 mm`, `12.106 in`. */
export function millimetres(value: number, digits = 1, to: Speech = speech()): string {
  return `${bareMillimetres(value, digits, to)}${NO_BREAK}${unit(to)}`;
}

/** A length given in millimetres, in a column whose head names the unit: `307.5`. */
export function bareMillimetres(value: number, digits = 1, to: Speech = speech()): string {
  return fixed(...inUnits(value, digits, to), to);
}

/** A deviation given in millimetres, always with its sign: `+6.2`, `−0.4`, `0.0`. */
export function signed(value: number, digits = 1, to: Speech = speech()): string {
  const [shown, shownDigits] = inUnits(value, digits, to);
  const text = fixed(shown, shownDigits, to);
  return shown > 0 && Number(shown.toFixed(shownDigits)) !== 0 ? `+${text}` : text;
}

/** A deviation with its unit: `+6.2 mm`. */
export function signedMillimetres(value: number, digits = 1, to: Speech = speech()): string {
  return `${signed(value, digits, to)}${NO_BREAK}${unit(to)}`;
}

/** A number that is no length, in the reader's language: `1.25`. */
export function decimal(value: number, digits: number, to: Speech = speech()): string {
  return fixed(value, digits, to);
}

/** A number that is no length, always with its sign. */
export function signedDecimal(value: number, digits: number, to: Speech = speech()): string {
  const text = fixed(value, digits, to);
  return value > 0 && Number(value.toFixed(digits)) !== 0 ? `+${text}` : text;
}

/** A number that is no length, with no more digits than it has, and at most so many: `3`, `0.5`. */
export function brief(value: number, most = 2, to: Speech = speech()): string {
  const digits = String(Number(value.toFixed(most))).split('.')[1]?.length ?? 0;
  return fixed(value, digits, to);
}

/** A length given in millimetres, with no more digits than it has: `3 mm`, `0.5 mm`, `0.118 in`. */
export function briefMillimetres(value: number, to: Speech = speech()): string {
  const [shown, most] = inUnits(value, 1, to);
  return `${brief(shown, to.units === 'mm' ? 3 : most, to)}${NO_BREAK}${unit(to)}`;
}

/** A share of one as a percentage: `78 %`. Certainty is not claimed by rounding. */
export function percent(share: number): string {
  const rounded = Math.round(share * 100);
  if (rounded === 100 && share < 1) return `>${NO_BREAK}99${NO_BREAK}%`;
  if (rounded === 0 && share > 0) return `<${NO_BREAK}1${NO_BREAK}%`;
  return percentTaken(share);
}

/** What is taken of a whole, which may be more than all of it: `56 %`, `114 %`. */
export const percentTaken = (part: number): string => `${Math.round(part * 100)}${NO_BREAK}%`;

/** A probability as a percentage; it is never told as certain: `> 99 %`, `< 1 %`. */
export function probability(p: number): string {
  return percent(Math.min(1 - 1e-9, Math.max(1e-9, p)));
}

/** A count with its noun: `1 job`, `1,204 jobs`. Where words are in the catalogue, it has the plural. */
export function count(number: number, one: string, many = `${one}s`): string {
  return `${grouped(number)}${NO_BREAK}${number === 1 ? one : many}`;
}

/** A whole number, thousands set apart: `10,000`. */
export function grouped(number: number, to: Speech = speech()): string {
  return digitsOf(number, 0, to, true);
}
