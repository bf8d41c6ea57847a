import type { HabitCell } from '../habits';
import type { ShopRisk } from '../measuring-risk';
import type { HandQuarter, HandShares, PlaceFigure, PlaceKind, Practice, ToAThird } from '../my-hand';
import type { FairRates, RateGrouping, RateJob } from '../rates';
import type { Attention, SignalChart } from '../signals';
import type { WhatIf, WhatIfRow } from '../what-if';
import type { MissetCount } from './misset-counts';
import type { SpanChoices } from './month-sums';
import type { Rests } from './ordinary-job';

/** Rates by every grouping. */
export type RatesAnswer = Record<RateGrouping, FairRates>;

/** What measuring error does to the rate; of the jobs only the most doubtful ones. */
export type RiskAnswer = ShopRisk;

export interface WhatIfAnswer {
  /** Null where there is no ordinary job to set anything beside. */
  answer: WhatIf | null;
  why: string | null;
  /** Each of these gauges out of service, in the order of their tags; the gauge farthest from the others among them. */
  without: { gauge: string; row: WhatIfRow }[];
  farthest: string | null;
  /** How many gauges the shop hangs: of more than are told, those farthest from the others are. */
  gauges: number;
  /** What scatter, rates and usage were learned from. */
  rests: Rests | null;
}

/** What one technician comes for. */
export interface HandAnswer {
  technician: string;
  /** mm, half width: what the shares are of. */
  tolerance: number;
  shares: HandShares;
  toAThird: ToAThird;
  /** The place where this hand is least sure comes of all places of a kind; in their order, not by size. */
  places: Record<PlaceKind, PlaceFigure[]>;
  quarters: HandQuarter[];
  practice: Practice;
  /** Likely mis-sets by month and gauge. */
  missets: MissetCount[];
}

/** What stands out of chance, without its charts. */
export type SignalsAnswer = Omit<Attention, 'charts'>;

/** Every technician by every habit. */
export type HabitsAnswer = HabitCell[];

/** The shop's questions with their answers. */
export interface Answers {
  rates: RatesAnswer;
  /** The jobs behind the rates, in the order of time: `fairRates` tells the rates of any part of them. */
  'rate-jobs': RateJob[];
  risk: RiskAnswer;
  signals: SignalsAnswer;
  /** The charts behind them, which only their own page draws. */
  'signal-charts': SignalChart[];
  'what-if': WhatIfAnswer;
  hands: HandAnswer[];
  /** The likely mis-sets of all hands. */
  missets: MissetCount[];
  habits: HabitsAnswer;
  /** What a stretch of time can be asked of. */
  choices: SpanChoices;
}

export type Question = keyof Answers;
