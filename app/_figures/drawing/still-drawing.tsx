import { classNames } from '@/app/_look/class-names';
import type { Drawing, Shape } from './drawing';
import { INKS, type Ink } from './inks';
import styles from './drawing.module.css';

/** Wider than this a drawing shrinks on a phone, and its words must not. */
const SHRINKS_FROM = 600;

/** A still chart on a page; it needs no script. */
export function StillDrawing({ drawing: { width, height, label, shapes } }: { drawing: Drawing }) {
  return (
    <svg
      className={classNames(styles.drawing, width > SHRINKS_FROM && styles.wide)}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={label}
    >
      {shapes.map((shape, index) => (
        <Drawn key={index} shape={shape} />
      ))}
    </svg>
  );
}

function Drawn({ shape }: { shape: Shape }) {
  if (shape.kind === 'word')
    return (
      <text
        className={classNames(
          shape.size === undefined ? styles.word : styles.sized,
          shape.strong === true && styles.strong,
        )}
        fontSize={shape.size}
        x={shape.x}
        y={shape.y}
        textAnchor={shape.anchor}
      >
        {shape.text}
      </text>
    );
  const look = lookOf(shape.ink);
  return shape.kind === 'dot' ? (
    <circle {...look} cx={shape.x} cy={shape.y} r={shape.r} />
  ) : (
    <path {...look} d={shape.d} />
  );
}

function lookOf(ink: Ink) {
  const { width, ...rest } = INKS[ink];
  return {
    className: styles[ink],
    strokeWidth: width,
    ...('dash' in rest && { strokeDasharray: rest.dash }),
  };
}
