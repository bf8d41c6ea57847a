import type { Cause } from '@/lib/measure';

/** What a re-check proved, as a statement about the reading. */
export const CAUSE_PROVED: Record<Cause, string> = {
  neither: 'neither',
  gauge: 'the gauge',
  body: 'the body',
  both: 'gauge and body',
};
