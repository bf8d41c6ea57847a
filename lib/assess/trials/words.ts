import type { TrialAnalysis } from './analyse';
import type { Estimated } from './types';

const FALSE_CALLS = 0.05;

/** What a trial shows, in plain sentences with their intervals. */
export function trialWords(
  { components, shareOfTolerance, distinctCategories, people }: Omit<TrialAnalysis, 'sentences'>,
  tolerance: number,
): string[] {
  const sentences: string[] = [];
  const { reading, setting, technician } = components;
  if (reading.value !== null) sentences.push(`Reading again, gauge untouched, scatters ${mm(reading)}.`);
  if (setting.value !== null) {
    sentences.push(
      reading.value === null
        ? `Hanging and reading once scatters ${mm(setting)}; each hanging was read once, so the two cannot be told apart.`
        : `Setting and hanging again adds ${mm(setting)}.`,
    );
  }
  if (technician.value !== null) sentences.push(`Technicians differ by ${mm(technician)} (as an sd).`);
  const { value, low, high } = shareOfTolerance;
  if (value !== null) {
    const limits = low === null || high === null ? '' : ` (${percent(low)} to ${percent(high)})`;
    const judged =
      value <= 1 / 3
        ? 'at most a third: one reading of one hanging decides'
        : value <= 1
          ? 'more than a third: hang again near the tolerance'
          : 'more than all of it: one hanging decides nothing';
    sentences.push(`One reading takes ${percent(value)}${limits} of ± ${tolerance} mm, ${judged}.`);
  }
  if (distinctCategories?.count != null) {
    const groups = distinctCategories.count === 1 ? '1 group' : `${distinctCategories.count} groups`;
    sentences.push(`Of these points the readings can tell ${groups} apart.`);
  }
  for (const { person, bias, p } of people) {
    if (p === null || p > FALSE_CALLS || bias.value === null) continue;
    const side = bias.value > 0 ? 'higher' : 'lower';
    sentences.push(`${person} reads ${side} than the mean of all by ${mm(absolute(bias))}, beyond chance.`);
  }
  if (people.length > 1 && people.every(({ p }) => p !== null && p > FALSE_CALLS)) {
    sentences.push(
      'No technician differs from the mean of all beyond chance; the intervals say how large a bias may be.',
    );
  }
  return sentences;
}

export function absolute({ value, low, high, why }: Estimated): Estimated {
  if (value === null || value >= 0) return { value, low, high, why };
  return { value: -value, low: high === null ? null : -high, high: low === null ? null : -low, why };
}

export function mm({ value, low, high }: Estimated): string {
  const digits = (number: number | null) => (number === null ? 'open' : number.toFixed(2));
  const limits = low === null && high === null ? 'no interval' : `${digits(low)} to ${digits(high)}`;
  return `${digits(value)} mm (${limits})`;
}

export const percent = (share: number): string => `${Math.round(100 * share)} %`;
