import type { GlyphName } from '@/app/_look/glyph';
import { sectionName, sectionInSentence } from '@/app/_words/jobs';
import { monthName } from '@/app/_words/times';
import type { FunnelPlace, RateGrouping } from '@/lib/assess/rates';
import { SECTIONS } from '@/lib/measure';
import type { RateFilter } from './question';

export const GROUPING_NAMES: Record<RateGrouping, string> = {
  technician: 'Technician',
  sheet: 'Sheet',
  section: 'Section',
  gauge: 'Gauge',
  month: 'Month',
  zone: 'Impact zone',
};

/** Beside what the funnel's limits allow to chance. */
export const PLACE_NAMES: Record<FunnelPlace, string> = {
  inside: 'Within the funnel',
  'low 95': 'Below the 95 % limit',
  'low 99.8': 'Below the 99.8 % limit',
  'high 95': 'Above the 95 % limit',
  'high 99.8': 'Above the 99.8 % limit',
};

export const PLACE_GLYPHS: Record<FunnelPlace, GlyphName> = {
  inside: 'within',
  'low 95': 'falling',
  'low 99.8': 'falling',
  'high 95': 'rising',
  'high 99.8': 'rising',
};

/** The name of a group as people say it. */
export function groupName(by: RateGrouping, name: string): string {
  if (by === 'month') return monthName(name);
  if (by !== 'section' && by !== 'zone') return name;
  const section = SECTIONS.find((one) => one === name);
  if (section !== undefined) return sectionName(section);
  return name === 'none' ? 'No dimension out before' : 'Not known';
}

/** A p value as it is said; below a thousandth nobody counts the zeros. */
export const pWords = (p: number): string => (p < 0.001 ? '< 0.001' : p.toFixed(p < 0.1 ? 3 : 2));

/** Which jobs count, in words: `all jobs`, `jobs of QUI with gauge CG4, from Jan 2026`. */
export function filterWords({ from, to, technician, gauge, sheet, section }: RateFilter): string {
  const parts = [
    technician !== undefined && `of ${technician}`,
    gauge !== undefined && `with gauge ${gauge}`,
    sheet !== undefined && `by the sheet ${sheet}`,
    from !== undefined && `from ${monthName(from)}`,
    to !== undefined && `until ${monthName(to)}`,
    section !== undefined && `in the ${sectionInSentence(section)} section alone`,
  ].filter((part) => part !== false);
  return parts.length === 0 ? 'all jobs' : `jobs ${parts.join(', ')}`;
}
