import { binomialAtLeast, chiSquareUpper } from '@/lib/stats/distributions';
import { digitPreference } from '@/lib/stats/digits';
import { binomialInterval } from '@/lib/stats/intervals';
import { remembering } from '@/lib/stats/numeric/remembering';
import type { HabitTally } from '../tally';
import { fivesByChance } from './by-chance';
import { type Hands, type HabitEffect, type Judgement, othersOf, untested } from './judgement';
import { type Count, moreOften, total } from './rates';
import { mostOnWhole } from './same-value';
import { readingVariance, type RepeatsIn } from './scatter';
import { HANDS_DIFFER, SEEN, WORTH_TRAINING } from './sizes';
import { percent, range } from './words';

const HABIT = 'preferred-digits';
const { digits: SPREAD } = HANDS_DIFFER;

/** Of a tally, what is looked at for last digits. */
export type Digits = Pick<HabitTally, 'digits'> & RepeatsIn<'halves'>;

/** Readings that the nine digits need before they are looked at one by one. */
const LEAST_FOR_NINE = 50;

/** A test with a smaller p than this tells its own story. */
const BEYOND_DOUBT = 1e-3;

/** Up to here the exact probability of the nine counts takes milliseconds. */
const MOST_EXACT = 70;

interface Part {
  p: number;
  enough: boolean;
  effect: HabitEffect;
  evidence: string;
  shown: string;
}

/**
 * Last digits preferred: up to four tests by what gauges are read in, the smallest p times their number. Each is held
 * against chance and, where others read the same gauges, against the other hands too (the larger p): a shop that reads
 * all gauges in halves has no hand with a habit.
 * - tenths: 0 and 5 more often than one in five (binomial);
 * - tenths: the digits 1 to 9 not alike (chi-square of `digitPreference`, and of the table beside the other hands);
 * - halves: whole or half millimetres more often than scatter allows at most (binomial);
 * - whole millimetres: 0 and 5 more often than sheet values and deviations make (`fivesByChance`).
 */
export function judgeDigits(technician: string, hands: Hands<Digits>): Judgement {
  const own = hands.all.get(technician);
  if (own === undefined) return untested('There are no readings.');
  const others = othersOf(hands, technician);
  const parts = [
    inTenths(own, others),
    inNineDigits(own, others),
    ...inHalves(own, others),
    inWhole(own),
  ].filter((part) => part !== null);
  const [first] = parts;
  if (first === undefined) return untested('There is no reading whose last digit could tell.');
  const best = parts.reduce((a, b) => (b.p < a.p ? b : a), first);
  // Where several are beyond doubt, the first says it in the plainest words.
  const told = parts.find(({ p }) => p < BEYOND_DOUBT) ?? best;
  return {
    p: Math.min(1, parts.length * best.p),
    why: null,
    effect: told.effect,
    enough: parts.some(({ enough }) => enough),
    evidence: told.evidence,
    shown: told.shown,
  };
}

/** A count against a chance, and against the same count in the other hands. */
function part(own: Count, others: readonly Count[], chance: number, words: string, shown: string): Part {
  const beside = moreOften(own, others, SPREAD, WORTH_TRAINING[HABIT]);
  const exact = (x: number): number => binomialAtLeast(x, own.n, Math.min(1, chance));
  const { low, high } = binomialInterval(own.x, own.n, { method: 'clopper-pearson' });
  const limits = [low ?? 0, high ?? 1] as const;
  const rest = total(others);
  const usual = rest.n > 0 ? ` In other hands ${percent(rest.x / rest.n)} do.` : '';
  return {
    p: Math.max(exact(own.x), beside?.p ?? 0),
    enough: exact(Math.round(own.n * Math.max(chance, WORTH_TRAINING[HABIT]))) <= SEEN / 2,
    effect: { value: own.x / own.n, low: limits[0], high: limits[1], unit: 'readings', reference: chance },
    evidence: `${own.x} of ${own.n} ${words} (${percent(own.x / own.n)}, ${range(...limits, percent)}), where ${percent(chance)} are expected${chance === 0.2 ? '' : ' at most'}.${usual}`,
    shown: `${HABIT}:${shown}`,
  };
}

function inTenths(own: Digits, others: readonly Digits[]): Part | null {
  const { heaped } = own.digits;
  if (heaped.n === 0) return null;
  const rest = others.map(({ digits }) => digits.heaped);
  return part(heaped, rest, 0.2, 'readings in tenths end in 0 or 5', 'heaped');
}

/** Digits 1 to 9: a 0 may be the sheet value, and `inTenths` counts the other ones. */
function inNineDigits(own: Digits, others: readonly Digits[]): Part | null {
  const counts = own.digits.tenths.slice(1);
  const n = counts.reduce((sum, count) => sum + count, 0);
  if (n < LEAST_FOR_NINE) return null;
  const byChance = n > MOST_EXACT ? chiSquareUpper(chiSquareAlike(counts), 8) : exactly(...counts);
  const rest = counts.map((_, digit) =>
    others.reduce((sum, { digits }) => sum + (digits.tenths[digit + 1] ?? 0), 0),
  );
  const beside = chiSquareBeside(counts, rest);
  const top = counts.reduce((best, count, digit) => (count > (counts[best] ?? 0) ? digit : best), 0);
  const x = counts[top] ?? 0;
  const { low, high } = binomialInterval(x, n, { method: 'clopper-pearson' });
  const limits = [low ?? 0, high ?? 1] as const;
  return {
    p: Math.max(byChance, beside),
    enough: false,
    effect: { value: x / n, low: limits[0], high: limits[1], unit: 'readings', reference: 1 / 9 },
    evidence: `Of ${n} heights in tenths that do not end in 0, ${x} end in ${top + 1} (${percent(x / n)}, ${range(...limits, percent)}), where one in nine is expected for each digit; together: ${counts.join(', ')} for 1 to 9.`,
    shown: `${HABIT}:${top + 1}`,
  };
}

/** It takes milliseconds, and counts change seldom. */
const exactly = remembering((...counts: number[]): number => {
  const { exactP, p } = digitPreference(counts);
  return exactP ?? p ?? 1;
});

/** Pearson's chi-square against equal chances. */
function chiSquareAlike(counts: readonly number[]): number {
  const n = counts.reduce((sum, count) => sum + count, 0);
  const expected = n / counts.length;
  return counts.reduce((sum, count) => sum + (count - expected) ** 2, 0) / expected;
}

/** p of Pearson's chi-square of the two rows beside each other; 0 where there is no second row. */
function chiSquareBeside(own: readonly number[], rest: readonly number[]): number {
  const a = own.reduce((sum, count) => sum + count, 0);
  const b = rest.reduce((sum, count) => sum + count, 0);
  if (b === 0) return 0;
  let chiSquare = 0;
  let cells = 0;
  own.forEach((count, i) => {
    const other = rest[i] ?? 0;
    if (count + other === 0) return;
    cells++;
    chiSquare += (count * Math.sqrt(b / a) - other * Math.sqrt(a / b)) ** 2 / (count + other);
  });
  return cells < 2 ? 1 : chiSquareUpper(chiSquare, cells - 1);
}

function inHalves(own: Digits, others: readonly Digits[]): Part[] {
  const { halves } = own.digits;
  if (halves.n === 0) return [];
  const sd = Math.sqrt(readingVariance(own, others, 'halves', 0));
  const most = Math.max(0.5, mostOnWhole(sd));
  const onHalf = ({ digits }: Digits): Count => ({
    n: digits.halves.n + digits.halvesAtSheet,
    x: digits.halves.n - digits.halves.x,
  });
  const rest = others.map(({ digits }) => digits.halves);
  return [
    part(halves, rest, most, 'readings in halves are whole millimetres', 'whole'),
    part(onHalf(own), others.map(onHalf), most, 'readings in halves are on the half', 'half'),
  ];
}

function inWhole(own: Digits): Part | null {
  const fives = fivesByChance(own.digits.whole);
  if (fives === null) return null;
  const { seen, expected, n, p } = fives;
  const { low, high } = binomialInterval(seen, n, { method: 'clopper-pearson' });
  const limits = [low ?? 0, high ?? 1] as const;
  return {
    p,
    enough: n >= 40,
    effect: { value: seen / n, low: limits[0], high: limits[1], unit: 'readings', reference: expected / n },
    evidence: `${seen} of ${n} readings in whole millimetres end in 0 or 5 (${percent(seen / n)}, ${range(...limits, percent)}), where ${percent(expected / n)} are expected.`,
    shown: `${HABIT}:fives`,
  };
}
