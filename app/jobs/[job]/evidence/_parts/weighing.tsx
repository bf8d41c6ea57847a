import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { signed } from '@/app/_words/numbers';
import { pieceName, times, weighingWords, type Kind, type RoundEvidence } from '@/lib/assess/evidence';
import prose from '@/app/_look/prose.module.css';
import styles from './all-heights.module.css';

interface WeighingProps {
  id: string;
  title: string;
  evidence: RoundEvidence;
  kind: Kind;
}

/** Less than this, as ln, is no word worth. */
const SAME = Math.log(1.095);

/** The two leading explanations against each other, piece by piece. */
export function Weighing({ id, title, evidence: { weighing }, kind }: WeighingProps) {
  if (weighing.length === 0) return null;
  // Lengths come in dozens, and most say the same under both.
  const silent = weighing.filter((one) => one.kind === 'length' && Math.abs(one.difference) < SAME);
  const telling = weighing.filter((one) => !silent.includes(one));
  return (
    <Panel
      id={id}
      title={title}
      note="Taken in the order in which the gauges were hung: each reading against what all before it led to expect. The factors multiply to the last line."
    >
      <div className={prose.prose}>
        <ul>
          {weighingWords(weighing, ['A', 'B'], kind).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </div>
      <Table
        caption="How many times likelier each piece of evidence is under one explanation than under the other"
        rows={telling}
        rowKey={({ kind: what, setup, point, side }) => [what, setup, point, side].join(' ')}
        columns={[
          {
            key: 'evidence',
            head: 'Evidence',
            names: true,
            cell: (one) => (
              <>
                {pieceName(one, kind)}
                {one.setup !== null && <small className={styles.aside}> {one.setup}</small>}
              </>
            ),
          },
          {
            key: 'read',
            head: 'Read, mm',
            numeric: true,
            cell: ({ measured }) => (measured === null ? '' : signed(measured)),
          },
          {
            key: 'for',
            head: 'Speaks for',
            cell: ({ difference }) => (Math.abs(difference) < SAME ? 'neither' : difference > 0 ? 'A' : 'B'),
          },
          { key: 'times', head: 'How much', whole: true, cell: ({ difference }) => times(difference) },
          {
            key: 'so-far',
            head: 'All so far',
            whole: true,
            cell: ({ sum }) => (Math.abs(sum) < SAME ? times(sum) : `${sum > 0 ? 'A' : 'B'} ${times(sum)}`),
          },
        ]}
      />
      {silent.length > 0 && (
        <p>
          About equally likely under both: {silent.length === 1 ? 'the length' : 'the lengths'}{' '}
          {silent.map(({ point }) => (point ?? '').replace('-', '–')).join(', ')}.
        </p>
      )}
    </Panel>
  );
}
