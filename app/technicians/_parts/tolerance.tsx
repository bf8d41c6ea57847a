import { DownloadLinks } from '@/app/_figures/download/download-links';
import { IntervalBar, IntervalScale } from '@/app/_figures/interval-bar';
import { FiguresRow, type Figure } from '@/app/_look/figures-row';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { bareMillimetres, millimetres, percent } from '@/app/_words/numbers';
import type { HandAnswer } from '@/lib/assess/answers';
import type { ToAThird } from '@/lib/assess/my-hand';
import styles from './practice.module.css';
import { shareAxis, shareRows } from './share-drawing';

/** What this hand takes of the tolerance, and how often to read or hang until that is little enough. */
export function Tolerance({ hand, picture }: { hand: HandAnswer; picture: string }) {
  const { toAThird, tolerance } = hand;
  const rows = shareRows(hand);
  const axis = shareAxis(rows);
  return (
    <Panel
      id="tolerance"
      title={`Of the tolerance, ±${millimetres(tolerance)}`}
      note="Three standard deviations of one reading, as a share of the half width of the tolerance. The dashed line is the whole of it."
    >
      <Table
        caption="Share of the tolerance that this hand takes"
        rows={rows}
        rowKey={({ name }) => name}
        columns={[
          { key: 'what', head: 'What', names: true, cell: ({ name }) => name },
          {
            key: 'share',
            head: 'Share',
            numeric: true,
            cell: ({ share }) => (share === null ? 'none' : percent(share)),
          },
          {
            key: 'interval',
            head: '95 % interval',
            numeric: true,
            cell: ({ low, high }) =>
              low === null || high === null ? '' : `${percent(low)} to ${percent(high)}`,
          },
          {
            key: 'bar',
            head: <IntervalScale axis={axis} text={(tick) => `${Math.round(tick * 100)} %`} />,
            cell: ({ share, low, high, why }) =>
              share === null ? why : <IntervalBar axis={axis} value={share} low={low} high={high} line={1} />,
          },
        ]}
      />
      <DownloadLinks of="share of the tolerance" picture={picture} />
      <h3>Down to a third of the tolerance</h3>
      <p className={styles.sentence}>{toAThird.sentence}</p>
      {toAThird.now !== null && <FiguresRow figures={thirdFigures(toAThird, toAThird.now)} />}
    </Panel>
  );
}

function thirdFigures({ goal, readings, hangings, surely }: ToAThird, now: number): Figure[] {
  const goalWords = `±${bareMillimetres(2 * goal, 2)} mm`;
  return [
    {
      name: 'One hanging, as read now',
      value: `±${millimetres(2 * now, 2)}`,
      detail: `Expanded uncertainty, k = 2; the goal is ${goalWords}. What is uncertain about it is told beside each number.`,
    },
    {
      name: 'Readings in one hanging',
      value: readings ?? 'none suffice',
      detail: `to come below ${goalWords}; ${sureWords(surely.readings)}`,
    },
    {
      name: 'Hangings, read as now',
      value: hangings ?? 'over 20',
      detail: `whose mean comes below ${goalWords}; ${sureWords(surely.hangings)}`,
    },
  ];
}

/** What is enough by the upper ends of the intervals. */
const sureWords = (number: number | null): string =>
  number === null
    ? 'by the upper ends of the intervals no number up to 20 is enough.'
    : `by the upper ends of the intervals ${number}.`;
