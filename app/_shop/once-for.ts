/**
 * Work that is done once for one object, and not again while somebody holds it. What is stored comes to pages as the
 * same frozen object for as long as it is unchanged, so this is done once for each change of it.
 */
export function onceFor<From extends object, Result>(work: (from: From) => Result): (from: From) => Result {
  const done = new WeakMap<From, { result: Result }>();
  return (from) => {
    const known = done.get(from) ?? { result: work(from) };
    done.set(from, known);
    return known.result;
  };
}
