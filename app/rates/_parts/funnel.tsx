import { StillDrawing } from '@/app/_figures/drawing/still-drawing';
import { drawnOnce } from '@/app/_look/still';
import type { FairRates } from '@/lib/assess/rates';
import { funnelDrawing } from './funnel-drawing';

/** Every group by its number of jobs, within the limits of chance. */
export const Funnel = drawnOnce(function Funnel({ rates }: { rates: FairRates }) {
  return <StillDrawing drawing={funnelDrawing(rates)} />;
});
