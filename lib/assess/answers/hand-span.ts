import { quarterOf } from '@/lib/measure/month-of';
import { mergeCollapsed } from '@/lib/stats';
import {
  byPlace,
  byQuarter,
  LEAST_TECHNICIANS,
  meanOf,
  sdOf,
  type HandCell,
  type HandQuarter,
  type PlaceFigure,
  type PlaceKind,
  type Quarter,
  type ShopQuarter,
} from '../my-hand';
import type { MeanEstimate, SdEstimate } from '../types';
import type { HandMonth } from './month-sums';

export interface HandFilter {
  gauge?: string | undefined;
  section?: HandCell['section'] | undefined;
}

/** What can be said of a hand within some months, with one gauge, in one section. */
export interface HandSpan {
  technician: string;
  /** Repeats with the gauge untouched. */
  repeatability: SdEstimate;
  /** Scatter of what the verdicts say that settings were off by, likely mis-sets set aside. */
  setting: SdEstimate;
  /** Its mean; the heights of one round share their datum, so a round counts once. */
  mean: MeanEstimate;
  /** Rounds behind the mean. */
  rounds: number;
  /** The shop's, all technicians together, or why it is not shown. */
  shop: { repeatability: SdEstimate; setting: SdEstimate } | null;
  shopWhy: string | null;
  places: Record<PlaceKind, PlaceFigure[]>;
  quarters: HandQuarter[];
}

export interface MonthOfHands {
  /** `2025-03`. */
  month: string;
  hands: HandMonth[];
}

/** The figures of one hand from the sums of some months. Null where the hand did nothing in them. */
export function handSpan(
  technician: string,
  months: readonly MonthOfHands[],
  { gauge, section }: HandFilter,
): HandSpan | null {
  const held = months.map(({ month, hands }) => ({
    quarter: quarterOf(month),
    hands: hands.map((hand) => ({
      ...hand,
      cells: hand.cells.filter(within),
      repeats: hand.repeats.filter(within),
    })),
  }));
  function within(of: { gauge: string; section: HandCell['section'] | null }): boolean {
    return (gauge === undefined || of.gauge === gauge) && (section === undefined || of.section === section);
  }
  const everybody = held.flatMap(({ hands }) => hands);
  const own = everybody.filter((hand) => hand.technician === technician);
  if (own.length === 0) return null;
  const cells = own.flatMap((hand) => hand.cells);
  const rounds = own
    .flatMap((hand) => hand.rounds)
    .filter((of) => of.gauge === (gauge ?? null) && of.section === (section ?? null))
    .reduce(mergeCollapsed, NONE);
  const shown = technicians(everybody) >= LEAST_TECHNICIANS;
  const quarters = [...new Set(held.map(({ quarter }) => quarter))].sort();
  const inQuarter = (quarter: string) =>
    held.filter((month) => month.quarter === quarter).flatMap(({ hands }) => hands);
  return {
    technician,
    ...scatterOf(own),
    mean: meanOf(rounds),
    rounds: rounds.n,
    shop: shown ? scatterOf(everybody) : null,
    shopWhy: shown
      ? null
      : `The shop’s band is shown where ${LEAST_TECHNICIANS} technicians or more measured: with fewer it would be a colleague’s.`,
    places: {
      'section and side': byPlace(cells, 'section and side'),
      'distance from the zero span': byPlace(cells, 'distance from the zero span'),
      gauge: byPlace(cells, 'gauge'),
    },
    quarters: byQuarter(
      quarters.flatMap((quarter): Quarter[] => {
        const mine = inQuarter(quarter).filter((hand) => hand.technician === technician);
        return mine.length === 0 ? [] : [{ quarter, ...sumsOf(mine) }];
      }),
      quarters.map((quarter): ShopQuarter => {
        const hands = inQuarter(quarter);
        return { quarter, ...sumsOf(hands), technicians: technicians(hands) };
      }),
    ),
  };
}

const NONE = { n: 0, mean: 0, ss: 0 };

type Sums = Pick<HandMonth, 'cells' | 'repeats'>;

/** As the quarters of the whole history: of the heights whose setting can be told. */
function sumsOf(hands: readonly Sums[]): Pick<Quarter, 'reading' | 'setting'> {
  const cells = hands.flatMap((hand) => hand.cells);
  const { n, mean, ss } = cells.reduce(mergeCollapsed, NONE);
  return {
    reading: {
      df: cells.reduce((sum, { readingDf }) => sum + readingDf, 0),
      ss: cells.reduce((sum, { readingSs }) => sum + readingSs, 0),
    },
    setting: { n, mean, ss },
  };
}

function scatterOf(hands: readonly Sums[]): { repeatability: SdEstimate; setting: SdEstimate } {
  const { setting } = sumsOf(hands);
  const repeats = hands.flatMap((hand) => hand.repeats);
  return {
    repeatability: sdOf(
      repeats.reduce((sum, { df }) => sum + df, 0),
      repeats.reduce((sum, { ss }) => sum + ss, 0),
      'Nothing was read twice there with the gauge untouched.',
    ),
    setting: sdOf(setting.n - 1, setting.ss, 'Two settings there are needed to see their scatter.'),
  };
}

/** How many technicians have anything behind them. */
const technicians = (hands: readonly HandMonth[]): number =>
  new Set(
    hands.filter(({ cells, repeats }) => cells.length + repeats.length > 0).map((hand) => hand.technician),
  ).size;
