import { SECTIONS } from '@/lib/measure/types';
import { atPoint, remark, type Remark } from '../remark';
import type { PointRow } from '../rows';

interface Placed {
  row: PointRow;
  index: number;
  station: number;
  section: number;
}

/**
 * Points whose station and section contradict each other: stations are counted from the front to the rear. The fewest
 * points are named whose mending puts all others in order.
 */
export function checkOrder(points: readonly PointRow[]): Remark[] {
  let placed = points.flatMap((row, index): Placed[] =>
    row.station === null || row.section === null
      ? []
      : [{ row, index, station: row.station, section: SECTIONS.indexOf(row.section) }],
  );
  const turned = placed.map((one) => ({ ...one, station: -one.station }));
  if (contrary(placed).size > 2 && contrary(turned).size === 0) return [remark('doubt', 'from-rear', null)];
  const found: Remark[] = [];
  for (;;) {
    const [worst] = [...contrary(placed)].sort(
      ([a, of], [b, than]) => than.length - of.length || b.index - a.index,
    );
    if (worst === undefined) return found.reverse();
    const [{ row, index, station }, [other]] = worst;
    if (other !== undefined)
      found.push(
        remark('doubt', 'order', atPoint(index, 'station'), {
          letter: row.letter,
          section: row.section ?? '',
          station: { mm: station },
          other: other.row.letter,
          otherSection: other.row.section ?? '',
          otherStation: { mm: other.station },
        }),
      );
    placed = placed.filter((one) => one.index !== index);
  }
}

/** Of each point those that it contradicts. */
function contrary(placed: readonly Placed[]): Map<Placed, Placed[]> {
  const found = placed.map((one): [Placed, Placed[]] => [
    one,
    placed.filter((other) => (one.section - other.section) * (one.station - other.station) < 0),
  ]);
  return new Map(found.filter(([, others]) => others.length > 0));
}
