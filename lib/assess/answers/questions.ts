import type { SignalChart } from '../signals';
import type { HandQuarter, QuarterFigures } from '../my-hand';
import type { HandAnswer } from './types';

/**
 * Long answers are kept in pieces, so that a change writes those that it concerns: under the question itself stands
 * which pieces there are.
 */
export const pieceQuestion = (question: string, piece: string): string =>
  JSON.stringify(['piece', question, piece]);

export type PiecedQuestion = 'hands' | 'missets' | 'signal-charts' | 'rate-jobs';

/** Under `hands`: whose pieces there are, and the shop's band by quarter, which all of them show. */
export interface HandsIndex {
  pieces: string[];
  bands: [quarter: string, figures: QuarterFigures][];
}

/** Under the other questions in pieces. */
export interface PieceIndex {
  pieces: string[];
}

/** Under `hands` of one technician: without likely mis-sets, which have a piece a year, since a reading changes one of them. */
export type HandPiece = Omit<HandAnswer, 'missets'>;

export const missetsPiece = (technician: string, year: string): string => JSON.stringify([technician, year]);

/** Of the pieces of likely mis-sets those of one technician, in the order of years. */
export const missetsPiecesOf = ({ pieces }: PieceIndex, technician: string): string[] =>
  pieces.filter((piece) => (JSON.parse(piece) as [string, string])[0] === technician);

/** A hand with the shop's band beside it; a quarter without one says why. */
export function withBands<Hand extends HandPiece>(hand: Hand, { bands }: HandsIndex): Hand {
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
