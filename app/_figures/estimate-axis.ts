import { decimal, inReadersUnits, signedDecimal } from '@/app/_words/numbers';
import { axisBetween, axisOver, type Axis } from './axis';

/** What is estimated: a standard deviation is never below zero, a bias has a sign. */
export type EstimateKind = 'sd' | 'bias';

interface Ends {
  low: number | null;
  high: number | null;
}

/**
 * Wide enough for nearly all intervals; a very uncertain one runs on beyond the end, as its arrow says. Its ticks are
 * round in the units of the reader.
 */
export function estimateAxis(
  estimates: readonly (Ends & { value: number | null })[],
  kind: EstimateKind,
  band: Ends | undefined,
): Axis {
  const values = estimates.flatMap((one) => (one.value === null ? [] : [one.value]));
  const ends = [...estimates.flatMap((one) => [one.low, one.high]), band?.low, band?.high].filter(
    (end) => typeof end === 'number',
  );
  const farthest = Math.max(0.1, ...values.map((value) => Math.abs(value) * 2));
  const reach = Math.min(Math.max(0.1, ...ends.map(Math.abs)), farthest * 1.5);
  return axisOfLengths(kind === 'bias' ? -reach : 0, reach);
}

/** A scale of lengths, mm, with about `wanted` ticks that are round in the units of the reader. */
export function axisOfLengths(low: number, high: number, wanted = 4): Axis {
  const one = inReadersUnits(1);
  const round = axisOver([], low * one, high * one, wanted);
  return axisBetween(
    round.low / one,
    round.high / one,
    round.ticks.map((tick) => tick / one),
  );
}

/** A tick as the axis needs it: no more digits than its steps have. */
export function estimateTick(tick: number, kind: EstimateKind, axis: Axis): string {
  const digits = decimals(axis.ticks.map((one) => inReadersUnits(one)));
  const shown = inReadersUnits(tick);
  return kind === 'bias' ? signedDecimal(shown, digits) : decimal(shown, digits);
}

function decimals(ticks: readonly number[]): number {
  const [most, tidy] = [4, 1e-6];
  for (let digits = 0; digits < most; digits++) {
    const whole = (value: number) => Math.abs(value - Math.round(value)) < tidy;
    if (ticks.every((tick) => whole(tick * 10 ** digits))) return digits;
  }
  return most;
}
