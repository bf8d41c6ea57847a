/** Half width of the tolerance where the sheet states none, mm. Source: common practice. */
export const DEFAULT_TOLERANCE = 3;

/**
 * The height that a gauge is set to: the sheet's height and the clearance of the round, mm.
 * Source: common practice.
 * @example setHeight(166, 100) // 266
 */
export function setHeight(sheetHeight: number, clearance: number): number {
  return sheetHeight + clearance;
}

/** Half of a width: from the centerline to either side, mm. Source: common practice. */
export function halfWidth(width: number): number {
  return width / 2;
}

/**
 * What lies between two pointers, from their outer sides: both widths taken off, mm.
 * @example insideFromOutside(1012, 6, 6) // 1000
 */
export function insideFromOutside(outside: number, widthA: number, widthB: number): number {
  return outside - (widthA + widthB);
}

/** From the outer side of one pointer to the outer side of the other, by what lies between them, mm. */
export function outsideFromInside(inside: number, widthA: number, widthB: number): number {
  return inside + (widthA + widthB);
}

/**
 * From centre to centre of two pointers (or holes, or bolt heads), by what lies between them, mm.
 * @example centresFromInside(1000, 6, 10) // 1008
 */
export function centresFromInside(inside: number, widthA: number, widthB: number): number {
  return inside + (widthA + widthB) / 2;
}

/**
 * How much too long a tram gauge reads between two points of one height when its pointers differ by `difference`, mm:
 * √(L² + d²) − L, near d² / 2L. It is never too short. Written without the difference of two near numbers.
 * @example unequalPointerError(1000, 40) // 0.7997
 */
export function unequalPointerError(length: number, difference: number): number {
  const squared = difference ** 2;
  return squared === 0 ? 0 : squared / (Math.hypot(length, difference) + length);
}

/** A length that was read: as the sheet has it, and what the gauge read beyond it, mm. */
export interface ReadLength {
  nominal: number;
  deviation: number;
}

export interface PointerDifference {
  /** Difference of the two pointers that explains the lengths best, mm; 0 where they are not too long together. */
  difference: number;
  /** 95 % limits, mm. */
  low: number;
  high: number;
  /** What it leaves unexplained of the deviations: root mean square, mm. */
  left: number;
}

/** Two-sided 95 % of the normal distribution. */
const COVERAGE = 1.959964;

/**
 * Which difference of the two pointers explains these lengths: least squares through zero of the deviation on
 * 1 / 2L, whose slope is d². The limits rest on `sd`, the standard uncertainty of one length (setting and reading).
 * @returns null without any length.
 */
export function pointersExplaining(lengths: readonly ReadLength[], sd: number): PointerDifference | null {
  const rows = lengths
    .filter(({ nominal }) => nominal > 0)
    .map((one) => ({ ...one, x: 1 / (2 * one.nominal) }));
  const information = rows.reduce((sum, { x }) => sum + x ** 2, 0);
  if (information === 0) return null;
  const squared = rows.reduce((sum, { x, deviation }) => sum + x * deviation, 0) / information;
  const half = (COVERAGE * sd) / Math.sqrt(information);
  const root = (value: number) => Math.sqrt(Math.max(0, value));
  const difference = root(squared);
  const rest = rows.reduce(
    (sum, { nominal, deviation }) => sum + (deviation - unequalPointerError(nominal, difference)) ** 2,
    0,
  );
  return {
    difference,
    low: root(squared - half),
    high: root(squared + half),
    left: Math.sqrt(rest / rows.length),
  };
}

/**
 * From the third pointer of a tracking gauge to the second, where all three points lie on the line of the bar:
 * the whole length less the part to the third pointer, mm.
 */
export function restOfTracking(whole: number, toThird: number): number {
  return whole - toThird;
}
