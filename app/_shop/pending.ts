import type {
  GaugeFigures,
  Learned,
  RecordedDimension,
  Rate,
  SdEstimate,
  TechnicianFigures,
} from '@/lib/assess';
import type { Round } from '@/lib/measure';
export declare function recordOf(round: Round): RecordedDimension[];
export declare function standardUncertainties(round: Round, learned: Learned): Map<string, number>;
export interface ShopFigures {
  technicians: TechnicianFigures[];
  gauges: GaugeFigures[];
  shop: { repeatability: SdEstimate; setting: SdEstimate };
}
export declare function currentFigures(
  shop: number,
): Promise<{ figures: ShopFigures; fittedAt: number; stale: boolean } | null>;
