import type { Drawing } from '@/app/_figures/drawing/drawing';
import { estimateDrawing } from '@/app/_figures/estimate-drawing';
import { unit } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import type { ShopFigures } from '@/lib/access';
import { technicianEstimates } from './estimates';

/** The figures of all technicians that stand side by side. */
export type SideBySide = 'repeatability' | 'setting' | 'bias';

export const sideBySideTitle = (of: SideBySide): string =>
  words('technicians')(`${of}.picture`, { unit: unit() });

/** One figure of every technician as a chart. */
export function techniciansDrawing({ technicians, shop }: ShopFigures, of: SideBySide): Drawing {
  const rows = technicianEstimates(technicians, of).map(({ key, value, low, high, why }) => ({
    name: key,
    value,
    low,
    high,
    why,
  }));
  const what = sideBySideTitle(of);
  return of === 'bias' ? estimateDrawing(what, 'bias', rows) : estimateDrawing(what, 'sd', rows, shop[of]);
}
