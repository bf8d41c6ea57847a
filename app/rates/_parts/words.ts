import type { GlyphName } from '@/app/_look/glyph';
import { sectionName, sectionInSentence } from '@/app/_words/jobs';
import { decimal } from '@/app/_words/numbers';
import { monthName } from '@/app/_words/times';
import { words } from '@/app/_words/words';
import type { FunnelPlace, RateGrouping } from '@/lib/assess/rates';
import { SECTIONS } from '@/lib/measure';
import type { RateFilter } from './question';

export const groupingName = (by: RateGrouping): string => words('rates')(`groupings.${by}`);

/** The same within a sentence: `by impact zone`. */
export const groupingInSentence = (by: RateGrouping): string => words('rates')(`groupingsInSentence.${by}`);

const PLACE_KEYS = {
  inside: 'inside',
  'low 95': 'low95',
  'low 99.8': 'low998',
  'high 95': 'high95',
  'high 99.8': 'high998',
} as const satisfies Record<FunnelPlace, string>;

/** Beside what the funnel's limits allow to chance. */
export const placeName = (place: FunnelPlace): string => words('rates')(`places.${PLACE_KEYS[place]}`);

/** The same within a sentence. */
export const placeInSentence = (place: FunnelPlace): string =>
  words('rates')(`placesInSentence.${PLACE_KEYS[place]}`);

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
  return words('rates')(name === 'none' ? 'zones.none' : 'zones.unknown');
}

/** A p value as it is said; below a thousandth nobody counts the zeros. */
export const pWords = (p: number): string =>
  p < 0.001 ? `<\u00a0${decimal(0.001, 3)}` : decimal(p, p < 0.1 ? 3 : 2);

/** Which jobs count, in words: `all jobs`, `jobs of QUI with gauge CG4, from Jan 2026`. */
export function filterWords({ from, to, technician, gauge, sheet, section }: RateFilter): string {
  const t = words('rates');
  const conditions = [
    technician !== undefined && t('counted.technician', { technician }),
    gauge !== undefined && t('counted.gauge', { gauge }),
    sheet !== undefined && t('counted.sheet', { sheet }),
    from !== undefined && t('counted.from', { month: monthName(from) }),
    to !== undefined && t('counted.to', { month: monthName(to) }),
    section !== undefined && t('counted.section', { section: sectionInSentence(section) }),
  ].filter((part) => part !== false);
  return conditions.length === 0
    ? t('counted.all')
    : t('counted.some', { conditions: conditions.join(', ') });
}
