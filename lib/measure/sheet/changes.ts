import { dimensionName } from '@/lib/measure/dimension';
import type { SheetContent, SheetPoint } from './content';
import { matchDimensions } from './match';

type Value = string | number | boolean | null;

/** One thing in which two states of a sheet differ. */
export interface SheetChange {
  /** The point with its side (`K L`), or the dimension (`height K L`, `length K-N`). */
  of: string;
  what: 'point' | 'dimension';
  field: ChangedField;
  from: Value;
  to: Value;
}

/** `itself`: it was not there before, or is no more; the value is what it was, or is. */
export type ChangedField =
  | 'itself'
  | 'nominal'
  | 'tolerance'
  | 'station'
  | 'section'
  | 'zero'
  | 'description'
  | 'feature'
  | 'halfWidth';

const OF_POINT = ['description', 'feature', 'section', 'station', 'zero', 'halfWidth'] as const;
const OF_DIMENSION = ['nominal', 'tolerance', 'section', 'station', 'zero'] as const;
/** Said of the point already, where the point is known before and after. */
const OF_BOTH: readonly string[] = ['section', 'station', 'zero'];

/** What changed from one state of a sheet to another: points first. */
export function sheetChanges(before: SheetContent, after: SheetContent): SheetChange[] {
  return [...pointChanges(before, after), ...dimensionChanges(before, after)];
}

const nameOf = ({ letter, side }: SheetPoint) => (side === null ? letter : `${letter} ${side}`);

function pointChanges(before: SheetContent, after: SheetContent): SheetChange[] {
  const old = new Map(before.points.map((point) => [nameOf(point), point]));
  const present = new Map(after.points.map((point) => [nameOf(point), point]));
  return [...new Set([...old.keys(), ...present.keys()])].flatMap((of): SheetChange[] => {
    const [from, to] = [old.get(of), present.get(of)];
    if (from === undefined || to === undefined)
      return [{ of, what: 'point', field: 'itself', ...existence(from?.station, to?.station, from, to) }];
    return OF_POINT.filter((field) => from[field] !== to[field]).map((field) => ({
      of,
      what: 'point',
      field,
      from: from[field],
      to: to[field],
    }));
  });
}

function dimensionChanges(before: SheetContent, after: SheetContent): SheetChange[] {
  const said = new Set(
    before.points
      .filter((point) => after.points.some((other) => nameOf(other) === nameOf(point)))
      .map(({ letter }) => letter),
  );
  return matchDimensions(before.dimensions, after.dimensions).flatMap(([from, to]): SheetChange[] => {
    const of = dimensionName(from ?? to);
    if (from === null || to === null)
      return [{ of, what: 'dimension', field: 'itself', ...existence(from?.nominal, to?.nominal, from, to) }];
    return OF_DIMENSION.filter((field) => from[field] !== to[field])
      .filter((field) => !OF_BOTH.includes(field) || from.quantity === 'length' || !said.has(from.point))
      .map((field) => ({ of, what: 'dimension', field, from: from[field], to: to[field] }));
  });
}

const existence = (
  from: number | null | undefined,
  to: number | null | undefined,
  was: object | null | undefined,
  is: object | null | undefined,
): { from: Value; to: Value } => ({
  from: was == null ? null : (from ?? true),
  to: is == null ? null : (to ?? true),
});
