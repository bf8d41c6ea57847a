import { Panel } from '@/app/_look/panel';
import { drawnOnce } from '@/app/_look/still';
import { Table } from '@/app/_look/table';
import { signed, unit } from '@/app/_words/numbers';
import type { Kind, RoundEvidence } from '@/lib/assess/evidence';
import { pieceName, times, weighingWords } from '../_words';
import prose from '@/app/_look/prose.module.css';
import styles from './all-heights.module.css';
import { words } from '@/app/_words/words';

interface WeighingProps {
  id: string;
  title: string;
  evidence: RoundEvidence;
  kind: Kind;
}

/** Less than this, as ln, is no word worth. */
const SAME = Math.log(1.095);

/** The two leading explanations against each other, piece by piece. */
export const Weighing = drawnOnce(function Weighing({
  id,
  title,
  evidence: { weighing },
  kind,
}: WeighingProps) {
  if (weighing.length === 0) return null;
  const t = words('evidence');
  // Lengths come in dozens, and most say the same under both.
  const silent = weighing.filter((one) => one.kind === 'length' && Math.abs(one.difference) < SAME);
  const telling = weighing.filter((one) => !silent.includes(one));
  return (
    <Panel id={id} title={title} note={t('weighing.note')}>
      <div className={prose.prose}>
        <ul>
          {weighingWords(weighing, ['A', 'B'], kind).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </div>
      <Table
        caption={t('weighing.caption')}
        rows={telling}
        rowKey={({ kind: what, setup, point, side }) => [what, setup, point, side].join(' ')}
        columns={[
          {
            key: 'evidence',
            head: t('weighing.evidence'),
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
            head: t('weighing.read', { unit: unit() }),
            numeric: true,
            cell: ({ measured }) => (measured === null ? '' : signed(measured)),
          },
          {
            key: 'for',
            head: t('weighing.speaksFor'),
            cell: ({ difference }) =>
              Math.abs(difference) < SAME ? t('weighing.neither') : difference > 0 ? 'A' : 'B',
          },
          {
            key: 'times',
            head: t('weighing.howMuch'),
            whole: true,
            cell: ({ difference }) => times(difference),
          },
          {
            key: 'so-far',
            head: t('weighing.soFar'),
            whole: true,
            cell: ({ sum }) => (Math.abs(sum) < SAME ? times(sum) : `${sum > 0 ? 'A' : 'B'} ${times(sum)}`),
          },
        ]}
      />
      {silent.length > 0 && (
        <p>
          {t('weighing.silent', {
            n: silent.length,
            lengths: silent.map(({ point }) => (point ?? '').replace('-', '–')).join(', '),
          })}
        </p>
      )}
    </Panel>
  );
});
