import { ScrollFrame } from '@/app/_look/scroll-frame';
import { signed, signedMillimetres } from '@/app/_words/numbers';
import type { Bar, Fault, Hypothesis, Kind } from '@/lib/assess/evidence';
import type { Side } from '@/lib/measure';
import styles from './hypothesis-figure.module.css';
import { FIELD, scaleOf } from './scale';
import { SideBars } from './side-bars';

interface HypothesisFigureProps {
  hypothesis: Hypothesis;
  /** All hypotheses are drawn to one scale: that of these bars. */
  scaledBy: readonly Bar[];
  letter: string;
  kind: Kind;
}

const SIDES: [Side, string][] = [
  ['L', 'Left side'],
  ['R', 'Right side'],
];

/** The stations from the side: measured bars, the straight datum and the tilted one, and the bars a hypothesis expects. */
export function HypothesisFigure({ hypothesis, scaledBy, letter, kind }: HypothesisFigureProps) {
  const { bars, datum, faults } = hypothesis;
  const scale = scaleOf(scaledBy);
  const sides = SIDES.filter(([side]) => bars.some((bar) => bar.side === side));
  const height = sides.length * scale.height;
  return (
    <figure className={styles.figure}>
      <ScrollFrame name="Picture, scrolls sideways on a small screen">
        <svg
          className={styles.picture}
          viewBox={`0 0 ${FIELD.width} ${height}`}
          role="img"
          aria-label={alternative(bars, sides, letter, kind)}
        >
          {sides.map(([side, name], index) => (
            <g key={side} transform={`translate(0 ${index * scale.height})`}>
              <SideBars
                name={kind === 'centerline' ? 'Centre pins, from below' : name}
                bars={bars.filter((bar) => bar.side === side)}
                datum={datum.find((line) => line.side === side) ?? null}
                faults={faultsOn(faults, side)}
                scale={scale}
              />
            </g>
          ))}
        </svg>
      </ScrollFrame>
      <figcaption className={styles.caption}>
        Front at the left. Deviations are drawn {scale.exaggeration} times as large as distances along the
        vehicle; numbers are what was read.
        {scaledBy.some(({ measured }) => Math.abs(measured) > scale.limit) &&
          ` Bars end at ${signedMillimetres(scale.limit, 0)} with a break; their number is the whole deviation.`}
      </figcaption>
    </figure>
  );
}

function faultsOn(faults: readonly Fault[], side: Side): Map<number, Fault['what'][]> {
  const found = new Map<number, Fault['what'][]>();
  for (const { station, what, sides } of faults) {
    if (sides === (side === 'L' ? 'right' : 'left')) continue;
    const there = found.get(station) ?? [];
    if (!there.includes(what)) found.set(station, [...there, what]);
  }
  return found;
}

/** The picture in words. */
function alternative(bars: readonly Bar[], sides: [Side, string][], letter: string, kind: Kind): string {
  const told = sides.map(([side, name]) => {
    const points = bars
      .filter((bar) => bar.side === side && bar.last && !bar.zero)
      .map((bar) => `${bar.point} read ${signed(bar.measured)}, expected ${signed(bar.expected)}`);
    return `${kind === 'centerline' ? 'Centre pins' : name}, millimetres from the sheet: ${points.join('; ')}.`;
  });
  return `Stations from the side under explanation ${letter}. ${told.join(' ')}`;
}
