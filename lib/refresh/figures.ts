import {
  gaugeFigures,
  shopBand,
  technicianFigures,
  type GaugeFigures,
  type Learned,
  type MeasuredSums,
  type ShopBand,
  type TechnicianFigures,
} from '@/lib/assess';

/** Everything that pages show of hands and gauges, made with the fit so that no page computes it. */
export interface ShopFigures {
  technicians: TechnicianFigures[];
  gauges: GaugeFigures[];
  /** The shop as a whole, to set one technician beside. */
  shop: ShopBand;
}

export const figuresOf = (measured: MeasuredSums, learned: Learned): ShopFigures => ({
  technicians: technicianFigures(measured, learned),
  gauges: gaugeFigures(measured, learned),
  shop: shopBand(measured, learned),
});
