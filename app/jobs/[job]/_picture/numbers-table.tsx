import { Tag } from '@/app/_look/tag';
import { Table, type Column } from '@/app/_look/table';
import { sideName } from '@/app/_words/dimensions';
import { signed, unit } from '@/app/_words/numbers';
import { CALL_GLYPHS, callName } from '@/app/_words/verdicts';
import { words } from '@/app/_words/words';
import type { Scene, SceneHeight, ScenePoint } from '@/app/_figures/vehicle-picture';

type Row = { point: ScenePoint; heights: (SceneHeight | undefined)[] };

/** The heights of a picture as numbers: of every round the deviation, its two parts, and what is said of it. */
export function NumbersTable({ scene }: { scene: Scene }) {
  const t = words('jobs');
  const rows = [...scene.points]
    .sort((a, b) => a.station - b.station || a.side.localeCompare(b.side))
    .map((point): Row => ({
      point,
      heights: scene.rounds.map(({ heights }) =>
        heights.find(({ letter, side }) => letter === point.letter && side === point.side),
      ),
    }));
  const number = (value: number | undefined) =>
    value === undefined ? t('picture.table.notRead') : signed(value);
  return (
    <Table
      caption={t('picture.table.caption', { unit: unit() })}
      rows={rows}
      rowKey={({ point }) => `${point.letter} ${point.side}`}
      columns={[
        {
          key: 'point',
          head: t('picture.table.point'),
          names: true,
          cell: ({ point }) => `${point.letter} ${sideName(point.side)}`,
        },
        ...scene.rounds.flatMap(({ name }, index): Column<Row>[] => [
          {
            key: `deviation ${index}`,
            head: t('picture.table.deviation', { round: name }),
            numeric: true,
            cell: ({ heights }) => number(heights[index]?.deviation),
          },
          {
            key: `body ${index}`,
            head: t('picture.table.body'),
            numeric: true,
            cell: ({ heights }) => {
              const height = heights[index];
              return height?.parts == null ? t('picture.table.notJudged') : signed(height.parts.body);
            },
          },
          {
            key: `gauge ${index}`,
            head: t('picture.table.gauge'),
            numeric: true,
            cell: ({ heights }) => {
              const height = heights[index];
              return height?.parts == null ? t('picture.table.notJudged') : signed(height.parts.gauge);
            },
          },
          {
            key: `call ${index}`,
            head: t('picture.table.call'),
            cell: ({ heights, point }) => {
              const height = heights[index];
              if (height === undefined) return '';
              if (point.zero) return t('picture.table.zero');
              return <Tag name={CALL_GLYPHS[height.call]}>{callName(height.call)}</Tag>;
            },
          },
        ]),
      ]}
    />
  );
}
