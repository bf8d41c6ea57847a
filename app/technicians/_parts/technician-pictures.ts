import type { Drawing } from '@/app/_figures/drawing/drawing';
import { estimateDrawing } from '@/app/_figures/estimate-drawing';
import { unit } from '@/app/_words/numbers';
import type { ShopFigures } from '@/lib/access';
import { technicianEstimates } from './estimates';

/** The figures of all technicians that stand side by side, as their page calls them. */
export const SIDE_BY_SIDE = {
  repeatability: 'Scatter of reading again',
  setting: 'Scatter of setting',
  bias: 'Bias of heights',
} as const;

export type SideBySide = keyof typeof SIDE_BY_SIDE;

/** One figure of every technician as a chart. */
export function techniciansDrawing({ technicians, shop }: ShopFigures, of: SideBySide): Drawing {
  const rows = technicianEstimates(technicians, of).map(({ key, value, low, high, why }) => ({
    ...{ name: key, value, low, high, why },
  }));
  const what = `${SIDE_BY_SIDE[of]} by technician, ${unit()}`;
  return of === 'bias' ? estimateDrawing(what, 'bias', rows) : estimateDrawing(what, 'sd', rows, shop[of]);
}
