/** A technician's own hand: what it takes of the tolerance, how often to read or hang, where it is least sure, what to practise. */
export { byPlace, meanOf, sdOf } from './by-place';
export { bandsOf, byQuarter, LEAST_TECHNICIANS, type HandQuarter, type QuarterFigures } from './by-quarter';
export { practiseNext, type Practice } from './practise-next';
export { handShares, sumOfVariances, type HandShares } from './share-of-tolerance';
export { toAThird, type ToAThird } from './to-a-third';
export type { Hand, HandCell, PlaceFigure, PlaceKind, Quarter, Share, ShopQuarter } from './types';
