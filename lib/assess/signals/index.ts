/** Signals, not noise: what needs attention now, with false alarms held down over all series together. */
export { attention, ONE_SERIES, type Attention, type OneSeries } from './attention';
export type { SignalOptions } from './design';
export { scorerOf, type Scorer } from './scores';
export type {
  ChartPoint,
  Design,
  RateSeries,
  Series,
  SettingSeries,
  Signal,
  SignalChart,
  Subject,
} from './types';
export { subjectWords } from './words';
