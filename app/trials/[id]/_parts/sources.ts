import type { Estimate } from '@/app/_figures/estimate-table';
import type { TrialAnalysis } from '@/lib/access';

export const NAMES = [
  ['reading', 'Reading again, gauge untouched'],
  ['setting', 'Setting and hanging again'],
  ['technician', 'From technician to technician'],
  ['technicianAtPoint', 'Technicians from point to point'],
  ['point', 'From point to point of the vehicle'],
] as const;

/** Where the scatter of a trial comes from, for a table of estimates. */
export const sourcesOf = ({ components, hangings }: TrialAnalysis): Estimate[] =>
  NAMES.map(([key, name]) => ({ key, name, ...components[key], rests: `${hangings} hangings` }));
