import { ScrollFrame } from '@/app/_look/scroll-frame';
import { signed, signedMillimetres } from '@/app/_words/numbers';
import { callInSentence } from '@/app/_words/verdicts';
import type { DatumLine } from '@/lib/assess';
import type { Side } from '@/lib/measure';
import { Legend } from './legend';
import type { StationMark } from './marks';
import { FIELD, scaleFor } from './scale';
import { SideBand } from './side-band';
import styles from './station-picture.module.css';

interface StationPictureProps {
  marks: readonly StationMark[];
  /** How far each end of the datum is estimated to be off. */
  datum: readonly DatumLine[];
}

const SIDES: [Side, string][] = [
  ['L', 'Left side'],
  ['R', 'Right side'],
];

/** The stations of a round from the side, front at the left: what each height deviates from the sheet. */
export function StationPicture({ marks, datum }: StationPictureProps) {
  if (marks.length === 0) return null;
  const scale = scaleFor(marks);
  const sides = SIDES.filter(([side]) => marks.some((mark) => mark.side === side));
  const height = sides.length * (FIELD.band + FIELD.above) + 8;
  const cut = marks.some((mark) => Math.abs(mark.deviation) > scale.limit);
  return (
    <figure className={styles.figure}>
      <ScrollFrame name="Picture, scrolls sideways on a small screen">
        <svg
          className={styles.picture}
          viewBox={`0 0 ${FIELD.width} ${height}`}
          role="img"
          aria-label={alternative(marks, sides)}
        >
          {sides.map(([side, name], index) => (
            <g key={side} transform={`translate(0 ${index * (FIELD.band + FIELD.above)})`}>
              <SideBand
                name={name}
                marks={marks.filter((mark) => mark.side === side)}
                datum={datum.find((line) => line.side === side) ?? null}
                scale={scale}
              />
            </g>
          ))}
        </svg>
      </ScrollFrame>
      <figcaption className={styles.caption}>
        Front of the vehicle at the left. Deviations are drawn {scale.exaggeration} times as large as
        distances along the vehicle: above the line the height reads more than the sheet, below it less.
        {cut &&
          ` Bars end at ${signedMillimetres(scale.limit, 0)} with a break; their number is the whole deviation.`}
      </figcaption>
      <Legend
        calls={[...new Set(marks.filter((mark) => !mark.zero).map((mark) => mark.call))]}
        tilted={datum.length > 0}
      />
    </figure>
  );
}

/** The picture in words: every point from front to rear. */
function alternative(marks: readonly StationMark[], sides: [Side, string][]): string {
  const told = sides.map(([side, name]) => {
    const points = marks
      .filter((mark) => mark.side === side && mark.last)
      .sort((a, b) => a.station - b.station)
      .map(
        (mark) =>
          `${mark.point} ${signed(mark.deviation)}${mark.zero ? ' (zero station)' : `, ${callInSentence(mark.call)}`}`,
      );
    return `${name}, millimetres from the sheet: ${points.join('; ')}.`;
  });
  return `Stations from the side, front to rear. ${told.join(' ')}`;
}
