import { words } from './words';

const ALL = ['reading', 'likelyGauge', 'procedure', 'centerFirst', 'gauges', 'tape', 'hazards'] as const;

/** What every page that could lead to an action on a vehicle says, in one place and in the same words. */
export function cautions(): { title: string; text: string }[] {
  const t = words('cautions');
  return ALL.map((name) => ({ title: t(`all.${name}.title`), text: t(`all.${name}.text`) }));
}
