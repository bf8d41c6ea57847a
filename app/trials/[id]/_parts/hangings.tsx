import { axisOver } from '@/app/_figures/axis';
import { ScrollFrame } from '@/app/_look/scroll-frame';
import { count, signed, signedMillimetres } from '@/app/_words/numbers';
import type { TrialView } from '@/lib/access';
import styles from './hangings.module.css';

const WIDTH = 800;
const HEIGHT = 320;
const LEFT = 64;
const RIGHT = 8;
const TOP = 14;
const BOTTOM = 58;

/** The mean of every hanging as a dot, side by side for the technicians at each point. */
export function Hangings({ trial }: { trial: TrialView }) {
  const cells = cellsOf(trial);
  const means = cells.flatMap(({ hangings }) => hangings);
  const tolerance = Math.min(...trial.plan.points.map((point) => point.tolerance));
  const axis = axisOver(means, -1, 1, 5);
  const step = (WIDTH - LEFT - RIGHT) / Math.max(1, cells.length);
  const x = (cell: number, place = 0.5) => LEFT + (cell + place) * step;
  const y = (value: number) => TOP + (1 - axis.place(value)) * (HEIGHT - TOP - BOTTOM);
  const { people, points } = trial.plan;
  const within = [-tolerance, tolerance].filter((limit) => limit >= axis.low && limit <= axis.high);
  return (
    <figure className={styles.figure}>
      <ScrollFrame name="Picture of the hangings, scrolls sideways">
        <svg
          className={styles.still}
          viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
          role="img"
          aria-label={sentence(trial, cells)}
        >
          {axis.ticks.map((tick) => (
            <g key={tick}>
              <path
                className={tick === 0 ? styles.zero : styles.grid}
                d={`M${LEFT} ${y(tick)}H${WIDTH - RIGHT}`}
              />
              <text className={styles.tick} x={LEFT - 8} y={y(tick) + 5} textAnchor="end">
                {signed(tick, axis.ticks.every(Number.isInteger) ? 0 : 1)}
              </text>
            </g>
          ))}
          {within.map((limit) => (
            <path key={limit} className={styles.limit} d={`M${LEFT} ${y(limit)}H${WIDTH - RIGHT}`} />
          ))}
          {points.map((point, index) => (
            <g key={point.name}>
              {index > 0 && (
                <path className={styles.between} d={`M${x(index * people.length, 0)} ${TOP}V${HEIGHT - 8}`} />
              )}
              <text
                className={styles.tick}
                x={x(index * people.length, people.length / 2)}
                y={HEIGHT - 12}
                textAnchor="middle"
              >
                {point.name.length > 14 ? `${point.name.slice(0, 13)}…` : point.name}
              </text>
            </g>
          ))}
          {cells.map(({ person, point, hangings }, cell) => (
            <g key={`${point} ${person}`}>
              {hangings.length > 0 && (
                <path className={styles.mean} d={`M${x(cell, 0.2)} ${y(mean(hangings))}H${x(cell, 0.8)}`} />
              )}
              {hangings.map((value, index) => (
                <circle
                  key={index}
                  className={styles.dot}
                  cx={x(cell, (index + 1) / (hangings.length + 1))}
                  cy={y(value)}
                  r={5}
                />
              ))}
              <text className={styles.mark} x={x(cell)} y={HEIGHT - 36} textAnchor="middle">
                {person.slice(0, 6)}
              </text>
            </g>
          ))}
        </svg>
      </ScrollFrame>
      <figcaption className={styles.caption}>
        Deviation from the sheet in mm. A dot is the mean of one hanging, a stroke the mean of one technician
        at one point{within.length > 0 ? ', a broken line the tolerance' : ''}. The figures stand in the
        tables below.
      </figcaption>
    </figure>
  );
}

interface Cell {
  person: string;
  point: string;
  hangings: number[];
}

function cellsOf({ plan, runs, readings }: TrialView): Cell[] {
  return plan.points.flatMap(({ name, value: nominal }) =>
    plan.people.map((person) => ({
      ...{ person, point: name },
      hangings: runs
        .filter((line) => line.person === person && line.point === name)
        .flatMap(({ order }) => {
          const own = (readings ?? []).filter(({ run }) => run === order);
          return own.length < plan.readings ? [] : [mean(own.map(({ value }) => value - nominal))];
        }),
    })),
  );
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

function sentence({ plan }: TrialView, cells: readonly Cell[]): string {
  const parts = plan.points.map(({ name }) => {
    const own = cells.filter(({ point, hangings }) => point === name && hangings.length > 0);
    const each = own.map(({ person, hangings }) => `${person} ${signedMillimetres(mean(hangings), 2)}`);
    return `${name}: ${each.join(', ')}`;
  });
  return `Means of ${count(
    cells.reduce((sum, { hangings }) => sum + hangings.length, 0),
    'hanging',
  )}, deviations from the sheet. Mean of each technician at ${parts.join('; at ')}.`;
}
