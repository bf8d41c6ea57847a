import {
  gaugeFigures,
  shopBand,
  technicianFigures,
  type GaugeFigures,
  type Learned,
  type MeasuredSums,
  type ShopBand,
  type TechnicianFigures,
  type TechnicianRate,
} from '@/lib/assess';

/** Everything that pages show of hands and gauges, made with the fit so that no page computes it. */
export interface ShopFigures {
  technicians: TechnicianFigures[];
  gauges: GaugeFigures[];
  /** The shop as a whole, to set one technician beside. */
  shop: ShopBand;
}

/** @param rates of technicians from the same jobs, where they are known already */
export const figuresOf = (
  measured: MeasuredSums,
  learned: Learned,
  rates?: Map<string, TechnicianRate>,
): ShopFigures => ({
  technicians: technicianFigures(measured, learned, rates),
  gauges: gaugeFigures(measured, learned),
  shop: shopBand(measured, learned),
});
