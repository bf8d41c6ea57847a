import type { Ink } from './inks';

/** One stroke, dot or word of a drawing, in the units of its view. */
export type Shape =
  | { kind: 'path'; d: string; ink: Ink }
  | { kind: 'dot'; x: number; y: number; r: number; ink: Ink }
  | {
      kind: 'word';
      x: number;
      y: number;
      text: string;
      anchor: 'start' | 'middle' | 'end';
      /** Height of the letters, where it is not that of all charts; such words do not grow on a phone. */
      size?: number;
      strong?: boolean;
    };

/**
 * A still chart as plain shapes: the page draws it in the colours of its theme (`StillDrawing`), the file of a download
 * in light ones (`svgText`), so both show the same.
 */
export interface Drawing {
  width: number;
  height: number;
  /** What the picture shows, in sentences, for those who hear it. */
  label: string;
  shapes: Shape[];
}

export const path = (ink: Ink, d: string): Shape => ({ kind: 'path', d: tidyPath(d), ink });

export const dot = (ink: Ink, x: number, y: number, r: number): Shape => ({
  kind: 'dot',
  ink,
  r,
  x: tidy(x),
  y: tidy(y),
});

export const word = (
  text: string,
  x: number,
  y: number,
  anchor: 'start' | 'middle' | 'end' = 'start',
): Shape => ({ kind: 'word', text, x: tidy(x), y: tidy(y), anchor });

/** A word of a size of its own; a strong one stands out in full ink, over what is drawn below it. */
export const sized = (
  text: string,
  x: number,
  y: number,
  size: number,
  { anchor = 'start', strong = false }: { anchor?: 'start' | 'middle' | 'end'; strong?: boolean } = {},
): Shape => ({ kind: 'word', text, anchor, size, strong, x: tidy(x), y: tidy(y) });

/** A line through points as the `d` of a path; broken where a point is missing. */
export function lineThrough(points: readonly (readonly [x: number, y: number] | null)[]): string {
  let text = '';
  let drawing = false;
  for (const point of points) {
    if (point !== null) text += `${drawing ? 'L' : 'M'}${tidy(point[0])} ${tidy(point[1])}`;
    drawing = point !== null;
  }
  return text;
}

/** To a hundredth of a unit: no eye sees more, and the page stays small. */
export const tidy = (value: number): number => Math.round(value * 100) / 100;

/** The same for each number of the `d` of a path. */
export const tidyPath = (d: string): string =>
  d.replaceAll(/-?\d+\.\d{3,}(?:e-?\d+)?/g, (number) => String(tidy(Number(number))));
