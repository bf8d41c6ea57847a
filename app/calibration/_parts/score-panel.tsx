import { drawnOnce } from '@/app/_look/still';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { decimal, grouped } from '@/app/_words/numbers';
import { monthName } from '@/app/_words/times';
import { causeName } from '@/app/_words/verdicts';
import type { BrierScore } from '@/lib/assess/calibration';
import type { Scores } from './proofs';
import { ScoreFigure } from './score-figure';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';

/** The Brier score of everything, of each cause, and month by month. */
export const ScorePanel = drawnOnce(function ScorePanel({ scores }: { scores: Scores }) {
  const { all, byCause, months } = scores;
  const t = words('calibration');
  return (
    <Panel id="score" title={t('score.title')} note={t('score.note')}>
      <Table
        caption={t('score.overAll')}
        rows={[
          { name: t('score.allCauses'), score: all },
          ...byCause.map(({ cause, score }) => ({ name: causeName(cause), score })),
        ]}
        rowKey={({ name }) => name}
        columns={[
          { key: 'name', head: t('score.cause'), names: true, cell: ({ name }) => name },
          { key: 'score', head: t('score.score'), numeric: true, cell: ({ score }) => figure(score.score) },
          { key: 'interval', head: t('interval'), numeric: true, cell: ({ score }) => interval(score) },
          {
            key: 'right',
            head: t('score.ifRight'),
            numeric: true,
            cell: ({ score }) => figure(score.ifRight),
          },
          {
            key: 'shares',
            head: t('score.ofShares'),
            numeric: true,
            cell: ({ score }) => figure(score.ofShares),
          },
        ]}
      />
      <ScoreFigure months={months} />
      <Table
        caption={t('score.byMonth')}
        rows={months}
        rowKey={({ month }) => month}
        empty={t('score.noMonth')}
        columns={[
          { key: 'month', head: t('score.month'), names: true, cell: ({ month }) => monthName(month) },
          { key: 'heights', head: t('heights'), numeric: true, cell: (one) => grouped(one.heights) },
          { key: 'rounds', head: t('score.rounds'), numeric: true, cell: (one) => grouped(one.rounds) },
          { key: 'score', head: t('score.score'), numeric: true, cell: (one) => figure(one.score) },
          { key: 'interval', head: t('interval'), numeric: true, cell: (one) => interval(one) },
        ]}
      />
    </Panel>
  );
});

const figure = (score: number | null): string =>
  score === null ? words('calibration')('none') : decimal(score, 3);

function interval({ low, high, why }: BrierScore): string {
  const t = words('calibration');
  if (low !== null && high !== null) return t('range', { low: decimal(low, 3), high: decimal(high, 3) });
  return why === null ? t('none') : told(why);
}
