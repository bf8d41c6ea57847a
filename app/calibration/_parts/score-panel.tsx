import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { grouped } from '@/app/_words/numbers';
import { monthName } from '@/app/_words/times';
import { causeName } from '@/app/_words/verdicts';
import { brierByMonth, brierScore, type BrierScore, type Foretold } from '@/lib/assess/calibration';
import { CAUSES } from '@/lib/measure';
import { ScoreFigure } from './score-figure';

/** The Brier score of everything, of each cause, and month by month. */
export function ScorePanel({ heights }: { heights: readonly (Foretold & { month: string })[] }) {
  const all = brierScore(heights);
  const months = brierByMonth(heights);
  return (
    <Panel
      id="score"
      title="Brier score"
      note="The mean squared distance of what was said from what proved so; smaller is better. Over all four causes it goes from 0 to 2, for one cause from 0 to 1. Intervals are 95 %, by the normal approximation of a mean, rounds taken as independent and the heights within a round not."
    >
      <Table
        caption="Over all proved heights"
        rows={[
          { name: 'All four causes', score: all },
          ...CAUSES.map((cause) => ({ name: causeName(cause), score: brierScore(heights, cause) })),
        ]}
        rowKey={({ name }) => name}
        columns={[
          { key: 'name', head: 'Cause', names: true, cell: ({ name }) => name },
          { key: 'score', head: 'Score', numeric: true, cell: ({ score }) => figure(score.score) },
          { key: 'interval', head: '95 % interval', numeric: true, cell: ({ score }) => interval(score) },
          {
            key: 'right',
            head: 'If all that was said were right',
            numeric: true,
            cell: ({ score }) => figure(score.ifRight),
          },
          {
            key: 'shares',
            head: 'Saying the shop’s shares of all',
            numeric: true,
            cell: ({ score }) => figure(score.ofShares),
          },
        ]}
      />
      <ScoreFigure months={months} />
      <Table
        caption="Month by month, all four causes"
        rows={months}
        rowKey={({ month }) => month}
        empty="No month has a proved height yet."
        columns={[
          { key: 'month', head: 'Month', names: true, cell: ({ month }) => monthName(month) },
          { key: 'heights', head: 'Heights', numeric: true, cell: (one) => grouped(one.heights) },
          { key: 'rounds', head: 'Rounds', numeric: true, cell: (one) => grouped(one.rounds) },
          { key: 'score', head: 'Score', numeric: true, cell: (one) => figure(one.score) },
          { key: 'interval', head: '95 % interval', numeric: true, cell: (one) => interval(one) },
        ]}
      />
    </Panel>
  );
}

const figure = (score: number | null): string => (score === null ? 'none' : score.toFixed(3));

const interval = ({ low, high, why }: BrierScore): string =>
  low === null || high === null ? (why ?? 'none') : `${low.toFixed(3)} to ${high.toFixed(3)}`;
