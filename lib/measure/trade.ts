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
