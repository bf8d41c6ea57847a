import type { Label } from './types';

export interface EncodedFactor {
  name: string;
  codes: Int32Array;
  levels: number;
  /** Label of each code, in sorted order: numbers by size, then text by character code. */
  labels: Label[];
}

/**
 * Labels as codes from 0, in the sorted order of the labels, so that nothing depends on the order of readings.
 *
 * A number and its text (1 and '1') are one level. RangeError for a label that is missing or not a number or text.
 */
export function encodeLevels(name: string, labels: readonly Label[]): EncodedFactor {
  const codes = new Int32Array(labels.length);
  const known = new Map<Label, number>();
  const found: Label[] = [];
  for (let i = 0; i < labels.length; i++) {
    const label = labels[i] as Label;
    let code = known.get(label);
    if (code === undefined) {
      code = newLevel(name, label, i, known, found);
      known.set(label, code);
    }
    codes[i] = code;
  }
  const order = found
    .map((_, code) => code)
    .sort((a, b) => compareLabels(found[a] as Label, found[b] as Label));
  const rank = new Int32Array(found.length);
  order.forEach((code, place) => (rank[code] = place));
  for (let i = 0; i < codes.length; i++) codes[i] = rank[codes[i] as number] as number;
  return { name, codes, levels: found.length, labels: order.map((code) => found[code] as Label) };
}

function newLevel(
  name: string,
  label: unknown,
  place: number,
  known: Map<Label, number>,
  found: Label[],
): number {
  if (typeof label === 'number' ? !Number.isFinite(label) : typeof label !== 'string') {
    throw new RangeError(
      `Every reading needs a level of "${name}", a text or a finite number; number ${place + 1} has ${String(label)}.`,
    );
  }
  const text = label as Label;
  const twin = typeof text === 'number' ? known.get(String(text)) : numericTwin(text, known);
  if (twin !== undefined) return twin;
  found.push(text);
  return found.length - 1;
}

function numericTwin(text: string, known: ReadonlyMap<Label, number>): number | undefined {
  const value = Number(text);
  return String(value) === text ? known.get(value) : undefined;
}

function compareLabels(a: Label, b: Label): number {
  if (typeof a === 'number' && typeof b === 'number') return a - b;
  if (typeof a === 'number') return -1;
  if (typeof b === 'number') return 1;
  return a < b ? -1 : a > b ? 1 : 0;
}
