import { atLength, atPoint, remark, type Remark } from '../remark';
import { lengthName, type PointRow, type SheetRows } from '../rows';

/** A road vehicle whose points all lie within this is typed in inches, mm. */
const SHORTEST_VEHICLE = 600;
/** Improbable beyond these, mm: half widths, heights, tolerances. Judgements of ours. */
const WIDEST = 1_400;
const HIGHEST = 2_500;
const LOWEST = -500;
const COARSEST = 15;

/** Values that are possible but improbable: inches typed as millimetres, a digit too many. */
export function checkSizes({ points, lengths }: SheetRows): Remark[] {
  const stations = points.flatMap(({ station }) => (station === null ? [] : [station]));
  const span = stations.length === 0 ? 0 : Math.max(...stations) - Math.min(...stations);
  if (new Set(stations).size >= 3 && span < SHORTEST_VEHICLE)
    return [remark('doubt', 'inches', null, { span: { mm: span } })];
  return [
    ...points.flatMap(improbable),
    ...lengths.flatMap((row, index) =>
      row.tolerance > COARSEST
        ? [remark('doubt', 'improbable', atLength(index, 'tolerance'), told(lengthName(row), row.tolerance))]
        : [],
    ),
  ];
}

const told = (letter: string, mm: number) => ({ letter, value: { mm } });

function improbable(row: PointRow, index: number): Remark[] {
  const { letter, height, halfWidth, tolerance } = row;
  const doubt = (column: 'height' | 'halfWidth' | 'tolerance', value: number) =>
    remark('doubt', 'improbable', atPoint(index, column), told(letter, value));
  return [
    ...(height !== null && (height > HIGHEST || height < LOWEST) ? [doubt('height', height)] : []),
    ...(halfWidth !== null && halfWidth > WIDEST ? [doubt('halfWidth', halfWidth)] : []),
    ...(tolerance > COARSEST ? [doubt('tolerance', tolerance)] : []),
  ];
}
