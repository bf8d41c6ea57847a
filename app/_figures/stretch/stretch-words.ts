import { monthName } from '@/app/_words/times';
import { words } from '@/app/_words/words';
import type { HeldMonths } from './asked-months';

/** `Mar 2025 to Jun 2025`, or `all months`. */
export function stretchWords({ from, to }: HeldMonths, months: readonly string[]): string {
  const [first, last] = [from ?? months[0], to ?? months.at(-1)];
  if (first === undefined || last === undefined) return words('figures')('stretch.all');
  return first === last
    ? monthName(first)
    : words('figures')('stretch.span', { from: monthName(first), to: monthName(last) });
}
