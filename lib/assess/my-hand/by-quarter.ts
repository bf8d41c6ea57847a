import type { MeanEstimate, SdEstimate } from '../types';
import { meanOf, sdOf } from './by-place';
import type { Quarter, ShopQuarter } from './types';

export interface HandQuarter {
  quarter: string;
  own: QuarterFigures;
  /** The shop's, all technicians together, or why it is not shown. */
  shop: QuarterFigures | null;
  shopWhy: string | null;
}

export interface QuarterFigures {
  repeatability: SdEstimate;
  setting: SdEstimate;
  mean: MeanEstimate;
}

/** With fewer technicians the shop's figures less one's own would be a colleague's. */
export const LEAST_TECHNICIANS = 3;

/** A hand over time beside the shop's band. The band is withheld where fewer than three technicians stand behind it. */
export function byQuarter(own: readonly Quarter[], shop: readonly ShopQuarter[]): HandQuarter[] {
  const bands = new Map(shop.map((quarter) => [quarter.quarter, quarter]));
  return own.map((quarter) => {
    const band = bands.get(quarter.quarter);
    const shown = band !== undefined && band.technicians >= LEAST_TECHNICIANS;
    return {
      quarter: quarter.quarter,
      own: figuresOf(quarter),
      shop: shown ? figuresOf(band) : null,
      shopWhy: shown
        ? null
        : `The shop’s band is shown where ${LEAST_TECHNICIANS} technicians or more measured: with fewer it would be a colleague’s.`,
    };
  });
}

/** The shop's figures of the quarters behind which enough technicians stand. */
export const bandsOf = (shop: readonly ShopQuarter[]): [quarter: string, figures: QuarterFigures][] =>
  shop
    .filter(({ technicians }) => technicians >= LEAST_TECHNICIANS)
    .map((quarter) => [quarter.quarter, figuresOf(quarter)]);

const figuresOf = ({ reading, setting }: Quarter): QuarterFigures => ({
  repeatability: sdOf(reading.df, reading.ss, 'Nothing was read twice with the gauge untouched.'),
  setting: sdOf(setting.n - 1, setting.ss, 'Two settings are needed to see their scatter.'),
  mean: meanOf(setting),
});
