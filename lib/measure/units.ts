/** Millimetres in one inch, exact since 1959 (international yard and pound agreement). */
export const MM_PER_INCH = 25.4;

export function inchesToMillimetres(inches: number): number {
  return inches * MM_PER_INCH;
}

export function millimetresToInches(millimetres: number): number {
  return millimetres / MM_PER_INCH;
}
