import type { Estimate } from '@/app/_figures/estimate-table';
import { whyTold } from '@/app/_words/why';
import { words } from '@/app/_words/words';
import type { TrialAnalysis } from '@/lib/access';

/** The sources as the analysis and as a file of figures call them. */
export const NAMES = [
  ['reading', 'Reading again, gauge untouched'],
  ['setting', 'Setting and hanging again'],
  ['technician', 'From technician to technician'],
  ['technicianAtPoint', 'Technicians from point to point'],
  ['point', 'From point to point of the vehicle'],
] as const;

/** Where the scatter of a trial comes from, for a table of estimates. */
export const sourcesOf = ({ components, hangings }: TrialAnalysis): Estimate[] =>
  NAMES.map(([key]) => ({
    key,
    name: words('trials')(`sources.names.${key}`),
    ...components[key],
    why: whyTold(components[key].why),
    rests: words('trials')('sources.rests', { n: hangings }),
  }));
