import { dimensionName } from '@/lib/measure/dimension';
import { grouped } from '@/lib/measure/grouped';
import type { Dimension } from '@/lib/measure/types';

/** A dimension of a sheet before and after a correction; null where it was not, or is no more. */
export type DimensionPair<Before extends Dimension, After extends Dimension> =
  [Before, After] | [Before, null] | [null, After];

/**
 * Which dimension became which: by name, and where a straight length and its diagonal share one, by their order, since
 * the diagonal of two points is always the longer one.
 */
export function matchDimensions<Before extends Dimension, After extends Dimension>(
  before: readonly Before[],
  after: readonly After[],
): DimensionPair<Before, After>[] {
  const [old, present] = [grouped(before, dimensionName), grouped(after, dimensionName)];
  return [...new Set([...old.keys(), ...present.keys()])].flatMap((name) =>
    matchAlike(old.get(name) ?? [], present.get(name) ?? []),
  );
}

function matchAlike<Before extends Dimension, After extends Dimension>(
  before: readonly Before[],
  after: readonly After[],
): DimensionPair<Before, After>[] {
  const [old, present] = [[...before].sort(byValue), [...after].sort(byValue)];
  if (old.length === present.length)
    return old.flatMap((one, index) => {
      const other = present[index];
      return other === undefined ? [] : [[one, other]];
    });
  const pairs: DimensionPair<Before, After>[] = [];
  const left = [...old];
  for (const one of [...present].sort((a, b) => distance(a, old) - distance(b, old))) {
    const nearest = [...left].sort((a, b) => apart(a, one) - apart(b, one))[0];
    if (nearest !== undefined) left.splice(left.indexOf(nearest), 1);
    pairs.push(nearest === undefined ? [null, one] : [nearest, one]);
  }
  return [...pairs, ...left.map((one): DimensionPair<Before, After> => [one, null])];
}

const byValue = (a: Dimension, b: Dimension) => a.nominal - b.nominal;
const apart = (a: Dimension, b: Dimension) => Math.abs(a.nominal - b.nominal);
const distance = (one: Dimension, all: readonly Dimension[]) =>
  Math.min(...all.map((other) => apart(one, other)));
