/**
 * Elements of the typed arrays that the numerical kernels run over.
 *
 * A kernel's indices come from its own loops and from codes that were checked on the way in, so the check
 * that the element exists is made nowhere else but left out here: these loops are where the time goes.
 */

export function at(array: Float64Array, index: number): number {
  return array[index] as number;
}

export function codeAt(array: Int32Array, index: number): number {
  return array[index] as number;
}

export function addAt(array: Float64Array, index: number, amount: number): void {
  array[index] = (array[index] as number) + amount;
}

export function countAt(array: Int32Array, index: number): void {
  array[index] = (array[index] as number) + 1;
}
