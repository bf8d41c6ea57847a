import type { HeightPair } from '../cause/frame';
import type { HeightVerdict } from '../types';

const place = (pair: HeightPair): string => {
  const [left, right] = pair.points;
  if (left !== null && right !== null && left !== right) return `${left} and ${right}`;
  return left ?? right ?? 'this station';
};

const amount = (deviation: number): string =>
  `${Math.abs(deviation).toFixed(1)} mm ${deviation < 0 ? 'low' : 'high'}`;

/** From this probability of a mis-set zero gauge on, a reading that repeats may be the datum. */
const DATUM_IN_DOUBT = 0.05;

export function rehangWords(
  pair: HeightPair,
  height: HeightVerdict | undefined,
  pZeroMisset: number,
): string {
  const worst = Math.abs(pair.y[0]) >= Math.abs(pair.y[1]) ? 0 : 1;
  const side = worst === 0 ? 'left' : 'right';
  const hang = `Hang the gauge at ${place(pair)} again and read both sides`;
  if (height === undefined || Math.abs(pair.y[worst]) <= pair.tolerance[worst]) return `${hang}.`;
  const still = `if the ${side} side still reads ${amount(pair.y[worst])}`;
  if (pZeroMisset < DATUM_IN_DOUBT) return `${hang}; ${still}, it is the body.`;
  return `${hang}; ${still}, it is the body or a zero gauge that was set wrong: then hang the zero gauges again.`;
}

export const zeroWords = (pair: HeightPair): string =>
  `Set and hang the zero gauge at ${place(pair)} again, bring the other gauges level with it and read them anew; if the heights come right, the datum was tilted.`;

export const otherTechnicianWords = (pair: HeightPair, name: string): string =>
  `Let ${name} set and hang the gauge at ${place(pair)} and read both sides.`;

export const exchangeWords = (first: HeightPair, second: HeightPair): string =>
  `Exchange the gauges ${first.gauge} at ${place(first)} and ${second.gauge} at ${place(second)}, set both anew and read; what follows the gauge is the gauge, what stays is the body.`;

export const lengthWords = (point: string): string =>
  `Read the length ${point}; if it is out as well, a point at one of its ends has moved.`;
