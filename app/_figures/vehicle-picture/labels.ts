import { sized, type Shape } from '../drawing/drawing';

interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** Width of a word of this size, about. */
export const widthOf = (text: string, size: number): number => text.length * size * 0.56;

/** A sentence in lines that are no wider than this. */
export function linesOf(text: string, size: number, width: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && widthOf(longer, size) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

/** Words that keep out of each other's way: each takes the first of its places that is free, or the first at all. */
export class Labels {
  readonly #taken: Box[] = [];
  readonly shapes: Shape[] = [];

  /** Keeps a place free of words. */
  block(x: number, y: number, r: number): void {
    this.#taken.push({ left: x - r, right: x + r, top: y - r, bottom: y + r });
  }

  put(text: string, size: number, places: readonly (readonly [x: number, y: number])[], strong = true): void {
    const boxes = places.map(([x, y]) => boxOf(x, y, widthOf(text, size), size));
    const free = boxes.findIndex((box) => !this.#taken.some((other) => meet(box, other)));
    const at = Math.max(0, free);
    const [place, box] = [places[at], boxes[at]];
    if (place === undefined || box === undefined) return;
    this.#taken.push(box);
    this.shapes.push(sized(text, place[0], place[1], size, { anchor: 'middle', strong }));
  }
}

const boxOf = (x: number, y: number, width: number, size: number): Box => ({
  left: x - width / 2,
  right: x + width / 2,
  top: y - size * 0.8,
  bottom: y + size * 0.2,
});

const meet = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
