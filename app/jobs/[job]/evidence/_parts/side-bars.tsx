import { signed, unit } from '@/app/_words/numbers';
import { classNames } from '@/app/_look/class-names';
import type { DatumLine } from '@/lib/assess';
import type { Bar, Fault } from '@/lib/assess/evidence';
import styles from './hypothesis-figure.module.css';
import { FIELD, type Scale } from './scale';
import { words } from '@/app/_words/words';

const BAR = 11;
/** Setups of one station stand beside each other, the last one nearest its place. */
const STEP = 2 * BAR + 12;
/** Labels of the scale closer than this would touch. */
const LABEL_ROOM = 13;

interface SideBarsProps {
  name: string;
  bars: Bar[];
  datum: DatumLine | null;
  /** By station: what is wrong there under the hypothesis, on this side. */
  faults: Map<number, Fault['what'][]>;
  scale: Scale;
}

/** One side of the vehicle: what was read and what the hypothesis leads to expect, station by station. */
export function SideBars({ name, bars, datum: line, faults, scale }: SideBarsProps) {
  const left = FIELD.left - 8;
  const right = FIELD.width - FIELD.right;
  const tolerance = Math.max(...bars.map((bar) => bar.tolerance));
  const [high, zero, low] = [scale.y(tolerance), scale.y(0), scale.y(-tolerance)];
  const labels = zero - high < LABEL_ROOM ? [0] : [tolerance, 0, -tolerance];
  return (
    <>
      <text className={styles.side} x={0} y={16}>
        {name}
      </text>
      <rect className={styles.tolerance} x={left} y={high} width={right - left} height={low - high} />
      {labels.map((mm) => (
        <text key={mm} className={styles.scaleText} x={left - 6} y={scale.y(mm) + 4} textAnchor="end">
          {mm === 0 ? `0\u00a0${unit()}` : signed(mm, 0)}
        </text>
      ))}
      <path className={styles.datum} d={`M${left} ${zero}H${right}`} />
      {line !== null && <path className={styles.tilt} d={tilt(line, scale, left, right)} />}
      {placed(bars, scale).map(({ bar, x }) => (
        <Pair key={`${bar.setup} ${bar.point}`} bar={bar} x={x} scale={scale} />
      ))}
      {lastOnly(bars).map((bar) => (
        <Foot
          key={bar.station}
          bar={bar}
          x={scale.x(bar.station)}
          y={scale.height - 32}
          faults={faults.get(bar.station) ?? []}
        />
      ))}
    </>
  );
}

/** The measured bar, filled, and beside it the expected one, outlined, each with its own tip. */
function Pair({ bar, x, scale }: { bar: Bar; x: number; scale: Scale }) {
  const zero = scale.y(0);
  if (bar.zero) return <path className={styles.zeroMark} d={`M${x - 9} ${zero + 17}h18l-9 -16z`} />;
  const read = scale.y(bar.measured);
  const expected = scale.y(bar.expected);
  return (
    <g className={classNames(!bar.last && styles.earlier)}>
      <rect
        className={styles.read}
        x={x - BAR - 1}
        width={BAR}
        y={Math.min(zero, read)}
        height={Math.max(1, Math.abs(read - zero))}
      />
      {Math.abs(bar.measured) > scale.limit && (
        <path className={styles.cut} d={`M${x - BAR - 5} ${(zero + read) / 2 + 4}l${BAR + 8} -6`} />
      )}
      <rect
        className={styles.expected}
        x={x + 2}
        width={BAR}
        y={Math.min(zero, expected)}
        height={Math.max(1, Math.abs(expected - zero))}
      />
      <path className={styles.tip} d={`M${x + 2 + BAR / 2} ${expected - 6}l6 6l-6 6l-6 -6z`} />
      {bar.last && (
        <text
          className={styles.number}
          x={x}
          y={bar.measured >= 0 ? Math.min(read, expected - 6) - 6 : Math.max(read, expected + 6) + 15}
          textAnchor="middle"
        >
          {signed(bar.measured)}
        </text>
      )}
    </g>
  );
}

/** The letter of a station, and in words what is wrong there. */
function Foot({ bar, x, y, faults }: { bar: Bar; x: number; y: number; faults: Fault['what'][] }) {
  return (
    <>
      <text className={styles.letter} x={x} y={y} textAnchor="middle">
        {bar.point}
      </text>
      {faults.length > 0 && (
        <g className={styles[faults.length > 1 ? 'both' : (faults[0] ?? 'body')]}>
          <path className={styles.pointer} d={`M${x} ${y + 4}l5 6h-10z`} />
          <text className={styles.fault} x={x} y={y + 24} textAnchor="middle">
            {words('evidence')(`figure.faults.${faults.length > 1 ? 'both' : (faults[0] ?? 'body')}`)}
          </text>
        </g>
      )}
    </>
  );
}

const lastOnly = (bars: Bar[]): Bar[] => [...new Map(bars.map((bar) => [bar.station, bar])).values()];

function placed(bars: Bar[], scale: Scale): { bar: Bar; x: number }[] {
  return bars.map((bar) => {
    const same = bars.filter((other) => other.station === bar.station);
    const later = same.length - 1 - same.indexOf(bar);
    return { bar, x: scale.x(bar.station) - (bar.zero ? 0 : later * STEP) };
  });
}

/** Where heights would read if only the datum were off as the hypothesis has it. */
function tilt({ front, rear }: DatumLine, scale: Scale, left: number, right: number): string {
  const [xa, xb] = [scale.x(front.station), scale.x(rear.station)];
  const slope = (rear.error - front.error) / (xb - xa);
  const at = (x: number) => scale.y(-(front.error + slope * (x - xa)));
  return `M${left} ${at(left)}L${right} ${at(right)}`;
}
