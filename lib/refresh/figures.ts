import {
  gaugeFigures,
  shopBand,
  technicianFigures,
  type GaugeFigures,
  type Learned,
  type ShopBand,
  type TechnicianFigures,
} from '@/lib/assess';
import type { Job } from '@/lib/measure';

/** Everything that pages show of hands and gauges, made with the fit so that no page computes it. */
export interface ShopFigures {
  technicians: TechnicianFigures[];
  gauges: GaugeFigures[];
  /** The shop as a whole, to set one technician beside. */
  shop: ShopBand;
}

export const figuresOf = (jobs: readonly Job[], learned: Learned): ShopFigures => ({
  technicians: technicianFigures(jobs, learned),
  gauges: gaugeFigures(jobs, learned),
  shop: shopBand(jobs, learned),
});
