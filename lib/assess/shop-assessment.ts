import type { GaugeFigures, Rate, RoundVerdict, TechnicianFigures } from './types';

/** Everything that is computed of a shop's jobs at once: what the batch report prints. */
export interface ShopAssessment {
  technicians: TechnicianFigures[];
  gauges: GaugeFigures[];
  rounds: RoundVerdict[];
  firstTimeRight: Rate;
}
