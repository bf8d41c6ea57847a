import { words } from '@/app/_words/words';
import type { Cause } from '@/lib/measure';

/** What a re-check proved, as a statement about the reading: `It was the gauge`. */
export const causeProved = (cause: Cause): string => words('terms')(`proved.${cause}`);
