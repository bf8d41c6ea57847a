/** A straight scale from figures to places on a drawing. */
export interface Axis {
  low: number;
  high: number;
  ticks: number[];
  /** Place of a value, from 0 at `low` to 1 at `high`; values beyond the ends are held there. */
  place: (value: number) => number;
}

/** Steps that people count in. */
const STEPS = [1, 2, 2.5, 5, 10];

/** An axis with round ends and about `wanted` ticks that takes in every value given; `low` to `high` at least. */
export function axisOver(values: readonly number[], low: number, high: number, wanted = 4): Axis {
  const smallest = Math.min(low, ...values);
  const largest = Math.max(high, ...values);
  const step = roundStep((largest - smallest || 1) / wanted);
  const first = Math.floor(smallest / step + 1e-9);
  const last = Math.ceil(largest / step - 1e-9);
  const ticks = Array.from({ length: last - first + 1 }, (_, index) => tidy((first + index) * step));
  return axisBetween(tidy(first * step), tidy(last * step), ticks);
}

export function axisBetween(low: number, high: number, ticks: number[]): Axis {
  return { low, high, ticks, place: (value) => Math.min(1, Math.max(0, (value - low) / (high - low))) };
}

function roundStep(raw: number): number {
  const power = 10 ** Math.floor(Math.log10(raw));
  const factor = STEPS.find((step) => step * power >= raw * (1 - 1e-9)) ?? 10;
  return factor * power;
}

/** Ticks are sums of decimals: strip the binary noise. */
function tidy(value: number): number {
  return Number(value.toPrecision(12)) + 0;
}
