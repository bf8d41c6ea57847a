import type { Label } from '@/lib/stats/variance-components';
import type { BalancedTrial } from './balanced-table';
import type { CrossedTrialInput } from './types';

/** The trial as a complete balanced table, or why it is none. */
export function arrangeTrial({ part, operator, value }: CrossedTrialInput): BalancedTrial | { why: string } {
  const parts = levels(part);
  const operators = levels(operator);
  if (parts.size < 2) return { why: 'A crossed trial needs two parts at least.' };
  if (operators.size < 2) return { why: 'A crossed trial needs two operators at least.' };
  const readings = Array.from(parts, () => Array.from(operators, (): number[] => []));
  value.forEach((reading, i) => {
    readings[parts.get(String(part[i])) ?? 0]?.[operators.get(String(operator[i])) ?? 0]?.push(reading);
  });
  const repeats = readings[0]?.[0]?.length ?? 0;
  const uneven = readings.some((line) => line.some((cell) => cell.length !== repeats));
  if (uneven) {
    return {
      why: 'The trial is not balanced: not every operator read every part equally often. Only REML applies.',
    };
  }
  return { readings, parts: parts.size, operators: operators.size, repeats };
}

function levels(labels: readonly Label[]): Map<string, number> {
  const found = new Map<string, number>();
  for (const label of labels) if (!found.has(String(label))) found.set(String(label), found.size);
  return found;
}
