type Plain = string | number | boolean | null | undefined;

interface Known<Result> {
  byObject: WeakMap<object, Known<Result>>;
  byPlain: Map<Plain, Known<Result>>;
  made?: { result: Result };
}

const nothing = <Result>(): Known<Result> => ({ byObject: new WeakMap(), byPlain: new Map() });

/**
 * Work that is done once for some objects and plain values, and not again while somebody holds the objects. What is
 * stored comes to pages as the same frozen object for as long as it is unchanged, so this is done once for each change
 * of it.
 * @param work what comes of the first object hangs on it, so that has to be one that is let go when it changes
 */
export function onceFor<From extends readonly [object, ...(object | Plain)[]], Result>(
  work: (...from: From) => Result,
): (...from: From) => Result {
  const all = nothing<Result>();
  return (...from) => {
    let at = all;
    for (const one of from) at = within(at, one);
    at.made ??= { result: work(...from) };
    return at.made.result;
  };
}

function within<Result>(known: Known<Result>, one: object | Plain): Known<Result> {
  const isObject = typeof one === 'object' && one !== null;
  const there = isObject ? known.byObject.get(one) : known.byPlain.get(one);
  if (there !== undefined) return there;
  const made = nothing<Result>();
  if (isObject) known.byObject.set(one, made);
  else known.byPlain.set(one, made);
  return made;
}
