import { path, type Shape } from '../drawing/drawing';

/** A bar from `from` to `to` with slanting strokes: told from a full one without colour. */
export function hatched(x: number, width: number, from: number, to: number): Shape[] {
  const [top, bottom] = [Math.min(from, to), Math.max(from, to)];
  let strokes = '';
  for (let y = top - width; y < bottom; y += 4) {
    // From the left edge down to the right one, as far as it lies within the bar.
    const [y1, y2] = [y + width, y];
    const [a, b] = [Math.min(y1, bottom), Math.max(y2, top)];
    const at = (value: number) => x + ((y1 - value) / width) * width;
    if (a > b) strokes += `M${r(at(a))} ${r(a)}L${r(at(b))} ${r(b)}`;
  }
  const box = path('gaugePart', `M${r(x)} ${r(top)}h${r(width)}V${r(bottom)}h${r(-width)}z`);
  return strokes === '' ? [box] : [box, path('gaugeHatch', strokes)];
}

/** A full bar. */
export const full = (x: number, width: number, from: number, to: number): Shape =>
  path('bodyPart', `M${r(x)} ${r(from)}h${r(width)}V${r(to)}h${r(-width)}z`);

export const r = (value: number): number => Math.round(value * 10) / 10;
