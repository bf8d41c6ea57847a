import { ScrollFrame } from '@/app/_look/scroll-frame';
import { brief, signed, signedMillimetres, unit } from '@/app/_words/numbers';
import type { Bar, Fault, Hypothesis, Kind } from '@/lib/assess/evidence';
import type { Side } from '@/lib/measure';
import styles from './hypothesis-figure.module.css';
import { FIELD, scaleOf } from './scale';
import { SideBars } from './side-bars';
import { words } from '@/app/_words/words';

interface HypothesisFigureProps {
  hypothesis: Hypothesis;
  /** All hypotheses are drawn to one scale: that of these bars. */
  scaledBy: readonly Bar[];
  letter: string;
  kind: Kind;
}

const SIDES: readonly Side[] = ['L', 'R'];

/** The stations from the side: measured bars, the straight datum and the tilted one, and the bars a hypothesis expects. */
export function HypothesisFigure({ hypothesis, scaledBy, letter, kind }: HypothesisFigureProps) {
  const { bars, datum, faults } = hypothesis;
  const t = words('evidence');
  const scale = scaleOf(scaledBy);
  const sides = SIDES.filter((side) => bars.some((bar) => bar.side === side));
  const height = sides.length * scale.height;
  return (
    <figure className={styles.figure}>
      <ScrollFrame name={t('figure.scrolls')}>
        <svg
          className={styles.picture}
          viewBox={`0 0 ${FIELD.width} ${height}`}
          role="img"
          aria-label={alternative(bars, sides, letter, kind)}
        >
          {sides.map((side, index) => (
            <g key={side} transform={`translate(0 ${index * scale.height})`}>
              <SideBars
                name={t(kind === 'centerline' ? 'figure.pinsFromBelow' : `figure.sides.${side}`)}
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
        {t('figure.scale', { times: brief(scale.exaggeration) })}
        {scaledBy.some(({ measured }) => Math.abs(measured) > scale.limit) &&
          ` ${t('figure.cut', { limit: signedMillimetres(scale.limit, 0) })}`}
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
function alternative(bars: readonly Bar[], sides: readonly Side[], letter: string, kind: Kind): string {
  const t = words('evidence');
  const each = sides.map((side) => {
    const points = bars
      .filter((bar) => bar.side === side && bar.last && !bar.zero)
      .map((bar) =>
        t('figure.point', {
          point: bar.point,
          read: signed(bar.measured),
          expected: signed(bar.expected),
        }),
      );
    return t('figure.side', {
      side: t(kind === 'centerline' ? 'figure.pins' : `figure.sides.${side}`),
      unit: unit(),
      points: points.join('; '),
    });
  });
  return t('figure.told', { letter, sides: each.join(' ') });
}
