import type { Bar } from '@/lib/assess/evidence';

/** Field of the drawing in its own units; text is 13 of them high. */
export const FIELD = { width: 800, left: 58, right: 20, above: 46, below: 62 } as const;

/** Millimetres take up at most so much of the height, in the drawing's units. */
const ROOM = 170;

/** A tilted datum is seen by whether bars end on one line, so they are cut off only beyond this, mm. */
const LONGEST_BAR = 32;

export interface Scale {
  x: (station: number) => number;
  /** Downwards from the top of the band. */
  y: (deviation: number) => number;
  /** Bars beyond this are cut off, mm. */
  limit: number;
  /** How many times larger deviations are drawn than distances along the vehicle. */
  exaggeration: number;
  /** Of one side, in the drawing's units. */
  height: number;
}

/** One scale for all explanations of a round, so that their pictures can be compared. */
export function scaleOf(bars: readonly Bar[]): Scale {
  const stations = bars.map(({ station }) => station);
  const first = Math.min(...stations);
  const last = Math.max(...stations);
  const margin = Math.max(150, (last - first) * 0.08);
  const alongPerMm = (FIELD.width - FIELD.left - FIELD.right) / (last - first + 2 * margin);

  const held = (value: number): number => Math.min(LONGEST_BAR, Math.max(-LONGEST_BAR, value));
  const around = 1.6 * Math.max(...bars.map(({ tolerance }) => tolerance));
  const values = bars.flatMap(({ measured, expected }) => [held(measured), held(expected)]);
  const top = Math.max(around, ...values);
  const bottom = Math.min(-around, ...values);
  const exaggeration = Math.max(1, roundDown(ROOM / (top - bottom) / alongPerMm));
  const perMm = exaggeration * alongPerMm;
  return {
    x: (station) => FIELD.left + (station - first + margin) * alongPerMm,
    y: (deviation) => FIELD.above + (top - held(deviation)) * perMm,
    limit: LONGEST_BAR,
    exaggeration,
    height: FIELD.above + (top - bottom) * perMm + FIELD.below,
  };
}

/** Down to one or two figures, so that the stated scale is one that people can say. */
function roundDown(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  return (Math.floor((value / power) * 2) / 2) * power;
}
