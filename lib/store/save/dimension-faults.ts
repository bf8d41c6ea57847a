import { dimensionKey, type Dimension } from '@/lib/measure';

type Stated = number | string | boolean | null;

/** In what a line's dimension differs from the sheet's; readings of both could not be compared. */
export function dimensionFaults(sheet: Dimension, line: Dimension): { column: string; reason: string }[] {
  const faults: { column: string; reason: string }[] = [];
  const compare = (column: string, what: string, stated: Stated, said: Stated) => {
    if (stated === said) return;
    const reason = `The sheet states ${what} of ${dimensionKey(sheet)} as ${shown(stated)}, this line says ${shown(said)}.`;
    faults.push({ column, reason });
  };
  compare('nominal_mm', 'the value', sheet.nominal, line.nominal);
  compare('tolerance_mm', 'the tolerance', sheet.tolerance, line.tolerance);
  compare('station_mm', 'the station', sheet.station, line.station);
  compare('zero', 'whether the point is a zero station', sheet.zero, line.zero);
  // A line may leave the section out.
  if (line.section !== null) compare('section', 'the section', sheet.section, line.section);
  return faults;
}

function shown(value: Stated): string {
  if (value === null) return 'nothing';
  if (typeof value === 'number') return `${value} mm`;
  return typeof value === 'boolean' ? (value ? 'yes' : 'no') : value;
}
