import { inchesToMillimetres } from '@/lib/measure/units';

/** Numbers as they are typed, pasted, or sent by a digital gauge as if it were a keyboard. */
const NUMBER = /[+\-−]?(?:\d+\s+\d+\/\d+|\d+\/\d+|\d+[.,]\d+|\d+|[.,]\d+)\s*(mm|cm|inch|in|"|″)?/giu;
/** More is no reading but a text. */
const LONGEST = 80;

/**
 * The lengths in a line of text, in mm: `312,5`, `1 234.5 mm` is two numbers, `12 3/16 in`, `+0512.4mm`. Two numbers
 * are two dimensions read at once, as a tracking gauge gives them.
 * @param units what a number without a unit is in.
 * @returns null where the text holds anything that is no length.
 * @example typedLengths('512.5 318', 'mm') // [512.5, 318]
 * @example typedLengths('12 3/16', 'in') // [309.5625]
 */
export function typedLengths(text: string, units: 'mm' | 'in'): number[] | null {
  // A hyphen between a whole number and a fraction joins them: 12-3/16.
  const plain = text.trim().replace(/(\d)-(?=\d+\/\d)/g, '$1 ');
  if (plain === '' || plain.length > LONGEST) return null;
  if (plain.replace(NUMBER, '').replace(/[\s;|/\t]/g, '') !== '') return null;
  const found = [...plain.matchAll(NUMBER)];
  if (found.some((one, index) => runsOn(found[index - 1], one))) return null;
  const lengths = found.map(([whole, unit]) => {
    const digits = whole.slice(0, whole.length - (unit?.length ?? 0)).trim();
    return inMillimetres(valueOf(digits), unit?.toLowerCase() ?? units);
  });
  return lengths.length > 0 && lengths.every(Number.isFinite) ? lengths : null;
}

/** True where nothing parts two numbers: `1.234,5` is neither of the lengths that it could be. */
function runsOn(before: RegExpExecArray | undefined, one: RegExpExecArray): boolean {
  if (before === undefined || before[1] !== undefined || /^[+\-−]/.test(one[0])) return false;
  return before.index + before[0].length === one.index && !/\s$/.test(before[0]);
}

function valueOf(digits: string): number {
  const negative = /^[-−]/.test(digits);
  const parts = digits
    .replace(/^[+\-−]/, '')
    .trim()
    .replace(',', '.')
    .split(/\s+/);
  const sum = parts.reduce((total, part) => total + partOf(part), 0);
  return negative ? -sum : sum;
}

function partOf(part: string): number {
  const [above, below] = part.split('/');
  return below === undefined ? Number(above) : Number(above) / Number(below);
}

function inMillimetres(value: number, unit: string): number {
  if (unit === 'mm') return value;
  if (unit === 'cm') return value * 10;
  return inchesToMillimetres(value);
}
