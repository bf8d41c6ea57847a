import type { SignalChart } from '../signals';
import type { HandQuarter, QuarterFigures } from '../my-hand';
import type { HandAnswer } from './types';

/**
 * Long answers are kept in pieces, so that a change writes those that it concerns: under the question itself stands
 * which pieces there are.
 */
export const pieceQuestion = (question: PiecedQuestion, piece: string): string =>
  JSON.stringify(['piece', question, piece]);

export type PiecedQuestion = 'hands' | 'signal-charts' | 'rate-jobs';

/** Under `hands`: whose pieces there are, and the shop's band by quarter, which all of them show. */
export interface HandsIndex {
  pieces: string[];
  bands: [quarter: string, figures: QuarterFigures][];
}

/** Under the other questions in pieces. */
export interface PieceIndex {
  pieces: string[];
}

/** A hand with the shop's band beside it; a quarter without one says why. */
export function withBands(hand: HandAnswer, { bands }: HandsIndex): HandAnswer {
  const known = new Map(bands);
  return {
    ...hand,
    quarters: hand.quarters.map((quarter): HandQuarter => {
      const shop = known.get(quarter.quarter);
      return shop === undefined ? quarter : { ...quarter, shop, shopWhy: null };
    }),
  };
}

export const chartPiece = ({ series: { what, subject } }: Pick<SignalChart, 'series'>): string =>
  JSON.stringify([what, subject.kind, subject.name]);
