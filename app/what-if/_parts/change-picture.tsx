import { StillDrawing } from '@/app/_figures/drawing/still-drawing';
import { drawnOnce } from '@/app/_look/still';
import type { WhatIfRow } from '@/lib/assess/what-if';
import { changeDrawing } from './change-drawing';

/** What each scenario changes, as a picture. */
export const ChangePicture = drawnOnce(({ rows }: { rows: readonly WhatIfRow[] }) => (
  <StillDrawing drawing={changeDrawing(rows)} />
));
