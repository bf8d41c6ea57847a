import { drawnOnce } from '@/app/_look/still';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { IntervalBar, IntervalScale } from '@/app/_figures/interval-bar';
import { FiguresRow, type Figure } from '@/app/_look/figures-row';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { millimetres, percentTaken } from '@/app/_words/numbers';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import type { HandAnswer } from '@/lib/assess/answers';
import type { ToAThird } from '@/lib/assess/my-hand';
import styles from './practice.module.css';
import { shareAxis, shareRows } from './share-drawing';

/** What this hand takes of the tolerance, and how often to read or hang until that is little enough. */
export const Tolerance = drawnOnce(function Tolerance({
  hand,
  picture,
}: {
  hand: HandAnswer;
  picture: string;
}) {
  const t = words('hand');
  const { toAThird, tolerance } = hand;
  const rows = shareRows(hand);
  const axis = shareAxis(rows);
  return (
    <Panel
      id="tolerance"
      title={t('tolerance.title', { tolerance: millimetres(tolerance) })}
      note={t('tolerance.note')}
    >
      <Table
        caption={t('tolerance.caption')}
        rows={rows}
        rowKey={({ name }) => name}
        columns={[
          { key: 'what', head: t('what'), names: true, cell: ({ name }) => name },
          {
            key: 'share',
            head: t('tolerance.share'),
            numeric: true,
            cell: ({ share }) => (share === null ? t('none') : percentTaken(share)),
          },
          {
            key: 'interval',
            head: t('tolerance.interval'),
            numeric: true,
            cell: ({ low, high }) =>
              low === null || high === null
                ? ''
                : t('range', { low: percentTaken(low), high: percentTaken(high) }),
          },
          {
            key: 'bar',
            head: <IntervalScale axis={axis} text={(tick) => `${Math.round(tick * 100)} %`} />,
            cell: ({ share, low, high, why }) =>
              share === null ? why : <IntervalBar axis={axis} value={share} low={low} high={high} line={1} />,
          },
        ]}
      />
      <DownloadLinks of={t('tolerance.download')} picture={picture} />
      <h3>{t('tolerance.third')}</h3>
      <p className={styles.sentence}>{told(toAThird.sentence)}</p>
      {toAThird.now !== null && <FiguresRow figures={thirdFigures(toAThird, toAThird.now)} />}
    </Panel>
  );
});

function thirdFigures({ goal, readings, hangings, surely }: ToAThird, now: number): Figure[] {
  const t = words('hand');
  const goalWords = `±${millimetres(2 * goal, 2)}`;
  return [
    {
      name: t('tolerance.one'),
      value: `±${millimetres(2 * now, 2)}`,
      detail: t('tolerance.oneDetail', { goal: goalWords }),
    },
    {
      name: t('tolerance.readings'),
      value: readings ?? t('tolerance.noneSuffice'),
      detail:
        surely.readings === null
          ? t('tolerance.readingsUnsure', { goal: goalWords })
          : t('tolerance.readingsDetail', { goal: goalWords, n: surely.readings }),
    },
    {
      name: t('tolerance.hangings'),
      value: hangings ?? t('tolerance.over'),
      detail:
        surely.hangings === null
          ? t('tolerance.hangingsUnsure', { goal: goalWords })
          : t('tolerance.hangingsDetail', { goal: goalWords, n: surely.hangings }),
    },
  ];
}
