import { ScrollFrame } from '@/app/_look/scroll-frame';
import { millimetres } from '@/app/_words/numbers';
import type { Speech } from '@/app/_words/speech';
import type { Say } from '@/app/sheets/_parts/say';
import type { PointRow, SheetRows } from '@/lib/measure/sheet';
import { layOut, type SheetShape } from './layout';
import styles from './sheet-picture.module.css';

interface SheetPictureProps {
  rows: SheetRows;
  /** Places in the list of those lengths that cannot fit. */
  unfit: ReadonlySet<number>;
  say: Say;
  speech: Speech;
}

/** The sheet as a vehicle from below and from the side: the same on a page and while it is being typed. */
export function SheetPicture({ rows, unfit, say, speech }: SheetPictureProps) {
  const layout = layOut(rows, unfit);
  if (layout === null) return <p className={styles.none}>{say('picture.none')}</p>;
  const { width, height, below, side, datum, shapes } = layout;
  return (
    <figure className={styles.figure}>
      <ScrollFrame name={say('picture.frame')}>
        <svg
          className={styles.picture}
          viewBox={`0 0 ${width} ${height}`}
          preserveAspectRatio="xMinYMid meet"
          role="img"
          aria-label={alternative(rows.points, say, speech)}
        >
          {shapes.map((shape, index) => (
            <Drawn key={index} shape={shape} />
          ))}
          <text className={styles.title} x={8} y={below.y}>
            {say('picture.below')}
          </text>
          <text className={styles.title} x={8} y={side.y}>
            {say('picture.side')}
          </text>
          <text className={styles.note} x={8} y={datum.y + 18}>
            {say('picture.datum')}
          </text>
        </svg>
      </ScrollFrame>
      <figcaption className={styles.caption}>{say('picture.caption')}</figcaption>
    </figure>
  );
}

const MARK = 6;

function Drawn({ shape }: { shape: SheetShape }) {
  if (shape.kind === 'line') return <path className={styles[shape.look]} d={shape.d} />;
  if (shape.kind === 'letter')
    return (
      <text className={styles.letter} x={shape.x} y={shape.y} textAnchor="middle">
        {shape.text}
      </text>
    );
  const { look, x, y } = shape;
  return look === 'zero' ? (
    <rect className={styles.zero} x={x - MARK} y={y - MARK} width={2 * MARK} height={2 * MARK} />
  ) : (
    <circle className={styles[look]} cx={x} cy={y} r={MARK - 0.5} />
  );
}

/** The picture in words: every point from front to rear. */
function alternative(points: readonly PointRow[], say: Say, speech: Speech): string {
  const length = (value: number | null) =>
    value === null ? say('picture.unsaid') : millimetres(value, 1, speech);
  const told = points
    .filter(({ station }) => station !== null)
    .sort((a, b) => (a.station ?? 0) - (b.station ?? 0))
    .map((row) =>
      say(row.zero ? 'picture.zeroPoint' : 'picture.point', {
        letter: row.letter,
        side: say(`side.${row.side}`),
        station: length(row.station),
        height: length(row.height),
        halfWidth: length(row.halfWidth),
      }),
    );
  return `${say('picture.label')} ${told.join(' ')}`;
}
