import type { StationMark } from './marks';

/** Field of the drawing in its own units; text is 13 of them high. */
export const FIELD = { width: 800, left: 58, right: 20, band: 216, above: 26 } as const;

/** Bars longer than this (or four tolerances) are cut off, mm, so that one slip of a hundred millimetres does not flatten all others. */
const LONGEST_BAR = 12;

export interface Scale {
  x: (station: number) => number;
  /** Upwards from the datum line: a positive deviation is drawn above it. */
  y: (deviation: number) => number;
  /** Deviations beyond this are cut off, mm. */
  limit: number;
  /** How many times larger deviations are drawn than distances along the vehicle. */
  exaggeration: number;
}

export function scaleFor(marks: readonly Pick<StationMark, 'station' | 'deviation' | 'tolerance'>[]): Scale {
  const stations = marks.map((mark) => mark.station);
  const first = Math.min(...stations);
  const last = Math.max(...stations);
  const margin = Math.max(100, (last - first) * 0.06);
  const span = last - first + 2 * margin;
  const alongPerMm = (FIELD.width - FIELD.left - FIELD.right) / span;

  const largest = Math.max(...marks.map((mark) => Math.max(Math.abs(mark.deviation), mark.tolerance * 1.6)));
  const widest = Math.max(...marks.map((mark) => mark.tolerance));
  const limit = Math.min(Math.max(LONGEST_BAR, 4 * widest), largest);
  const room = FIELD.band / 2 - 46;
  const exaggeration = Math.max(1, roundDown(room / limit / alongPerMm));
  const acrossPerMm = exaggeration * alongPerMm;
  const held = (deviation: number) => Math.min(limit, Math.max(-limit, deviation));
  return {
    x: (station) => FIELD.left + (station - first + margin) * alongPerMm,
    y: (deviation) => -held(deviation) * acrossPerMm,
    limit,
    exaggeration,
  };
}

/** Down to one or two figures, so that the stated scale is one that people can say. */
function roundDown(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  return (Math.floor((value / power) * 2) / 2) * power;
}
