/**
 * What is made of some objects, made once for these: given the same objects again, the result is the same object, so
 * that what is made from it in turn is known too. Of results that begin with the same object the last one is kept, for
 * as long as somebody holds that object.
 */
export function sameFrom<From extends readonly object[], Result>(
  make: (from: From) => Result,
): (from: From) => Result {
  const kept = new WeakMap<object, { from: From; result: Result }>();
  return (from) => {
    const [first] = from;
    if (first === undefined) return make(from);
    const known = kept.get(first);
    if (known !== undefined && areSame(known.from, from)) return known.result;
    const result = make(from);
    kept.set(first, { from, result });
    return result;
  };
}

const areSame = (one: readonly object[], other: readonly object[]): boolean =>
  one.length === other.length && one.every((object, index) => object === other[index]);
