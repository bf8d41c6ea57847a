/** Which patterns of a bent structure the readings of a round bear out beyond their uncertainty. */
export { lengthPlaces, type End } from './changes';
export { patternsOf, type PatternOptions } from './patterns-of';
export {
  type Missing,
  NAMED_FROM,
  OPEN_FROM,
  PATTERN_NAMES,
  type PatternFinding,
  type PatternName,
  type PointPlace,
  type RoundPatterns,
  type Untold,
  type WhyNot,
} from './types';
