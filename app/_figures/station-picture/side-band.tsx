import { signed } from '@/app/_words/numbers';
import { classNames } from '@/app/_look/class-names';
import { CALL_GLYPHS } from '@/app/_words/verdicts';
import type { DatumLine } from '@/lib/assess';
import { MarkShape } from './mark-shape';
import type { StationMark } from './marks';
import { FIELD, type Scale } from './scale';
import { shiftLine } from './shift-line';
import styles from './station-picture.module.css';

interface SideBandProps {
  name: string;
  marks: StationMark[];
  datum: DatumLine | null;
  scale: Scale;
}

/** Labels of points closer than this would touch: the second one moves down a row. */
const LABEL_ROOM = 30;

export function SideBand({ name, marks, datum: line, scale }: SideBandProps) {
  const datum = FIELD.above + FIELD.band / 2 - 12;
  const tolerance = Math.max(...marks.map((mark) => mark.tolerance));
  const half = Math.abs(scale.y(tolerance));
  const left = FIELD.left - 8;
  const right = FIELD.width - FIELD.right;
  return (
    <>
      <text className={styles.side} x={0} y={16}>
        {name}
      </text>
      <rect className={styles.tolerance} x={left} y={datum - half} width={right - left} height={2 * half} />
      <text className={styles.scaleText} x={left - 6} y={datum - half + 4} textAnchor="end">
        {signed(tolerance, 0)}
      </text>
      <text className={styles.scaleText} x={left - 6} y={datum + 4} textAnchor="end">
        0 mm
      </text>
      <text className={styles.scaleText} x={left - 6} y={datum + half + 4} textAnchor="end">
        {signed(-tolerance, 0)}
      </text>
      <path className={styles.datum} d={`M${left} ${datum}H${right}`} />
      {line !== null && (
        <path className={styles.tilt} d={shiftLine(line, scale, datum, { from: left, to: right })} />
      )}
      {placed(marks, scale).map(({ mark, x, row }) => (
        <Bar
          key={mark.key}
          mark={mark}
          x={x}
          datum={datum}
          scale={scale}
          labelY={FIELD.above + FIELD.band - 10 - (1 - row) * 15}
        />
      ))}
    </>
  );
}

interface BarProps {
  mark: StationMark;
  x: number;
  datum: number;
  scale: Scale;
  labelY: number;
}

function Bar({ mark, x, datum, scale, labelY }: BarProps) {
  const tip = datum + scale.y(mark.deviation);
  const above = mark.deviation >= 0;
  const tint = mark.zero ? styles.zero : styles[CALL_GLYPHS[mark.call]];
  const footTop = Math.max(datum, tip) + (above && !mark.zero ? 18 : 38);
  const cut = Math.abs(mark.deviation) > scale.limit;
  return (
    <g className={classNames(styles.mark, tint, !mark.last && styles.earlier)}>
      <rect
        className={styles.bar}
        x={x - 5}
        width={10}
        y={Math.min(datum, tip)}
        height={Math.max(1, Math.abs(tip - datum))}
      />
      {cut && <path className={styles.cut} d={`M${x - 9} ${(datum + tip) / 2 + 4}l18 -6m-18 12l18 -6`} />}
      {mark.zero ? (
        <path className={styles.zeroMark} d={`M${x - 9} ${datum + 17}h18l-9 -16z`} />
      ) : (
        <MarkShape call={mark.call} x={x} y={tip} />
      )}
      {mark.last && (
        <>
          <text
            className={styles.number}
            x={x}
            y={mark.zero ? datum + 33 : above ? tip - 11 : tip + 22}
            textAnchor="middle"
          >
            {signed(mark.deviation)}
          </text>
          {footTop < labelY - 13 && <path className={styles.foot} d={`M${x} ${labelY - 13}V${footTop}`} />}
          <text className={styles.letter} x={x} y={labelY} textAnchor="middle">
            {mark.point}
          </text>
        </>
      )}
    </g>
  );
}

/** Earlier setups of a point stand a little to the front of the one that counts. */
function placed(marks: StationMark[], scale: Scale): { mark: StationMark; x: number; row: 0 | 1 }[] {
  const ordered = [...marks].sort((a, b) => a.station - b.station || Number(a.last) - Number(b.last));
  let lastLabel = -Infinity;
  let lastRow: 0 | 1 = 1;
  return ordered.map((mark) => {
    const same = ordered.filter((other) => other.station === mark.station && other.point === mark.point);
    const x = scale.x(mark.station) - (same.length - 1 - same.indexOf(mark)) * 13;
    if (!mark.last) return { mark, x, row: 0 };
    const row = x - lastLabel < LABEL_ROOM && lastRow === 0 ? 1 : 0;
    lastLabel = x;
    lastRow = row;
    return { mark, x, row };
  });
}
