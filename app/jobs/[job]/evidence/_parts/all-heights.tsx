import { Panel } from '@/app/_look/panel';
import { drawnOnce } from '@/app/_look/still';
import { Table, type Column } from '@/app/_look/table';
import { Tag } from '@/app/_look/tag';
import { heightAnchor } from '@/app/_words/address';
import { bareMillimetres, probability, signed, unit } from '@/app/_words/numbers';
import { CALL_GLYPHS, callName, causeInSentence } from '@/app/_words/verdicts';
import { callOf, type RoundVerdict } from '@/lib/assess';
import type { Bar, Kind, RoundEvidence } from '@/lib/assess/evidence';
import { CAUSES, type Cause } from '@/lib/measure';
import styles from './all-heights.module.css';
import { heightName } from '../_words';
import { letterOf } from './letters';
import { words } from '@/app/_words/words';

interface AllHeightsProps {
  id: string;
  title: string;
  evidence: RoundEvidence;
  verdict: RoundVerdict | null;
  missCost: number;
  kind: Kind;
}

/** Every height: what was read, what each explanation leads to expect, and what is said of it. */
export const AllHeights = drawnOnce(function AllHeights({
  id,
  title,
  evidence,
  verdict,
  missCost,
  kind,
}: AllHeightsProps) {
  const [first, ...others] = evidence.hypotheses;
  if (first === undefined) return null;
  const t = words('evidence');
  const said = saidOf(verdict, kind);
  const expected = [first, ...others].map(({ bars }, index): Column<Bar> => ({
    key: letterOf(index),
    head: t('all.expected', { letter: letterOf(index) }),
    numeric: true,
    cell: (bar) => {
      const same = bars.find((one) => keyOf(one) === keyOf(bar));
      return same === undefined ? '' : signed(same.expected);
    },
  }));
  return (
    <Panel id={id} title={title} note={t('all.note')}>
      <Table
        caption={t('all.caption', { unit: unit() })}
        rows={first.bars}
        rowKey={keyOf}
        rowId={(bar) => heightAnchor(kind === 'height' ? bar : { ...bar, side: 'C' })}
        columns={[
          {
            key: 'height',
            head: t(kind === 'height' ? 'all.height' : 'all.pin'),
            names: true,
            cell: (bar) => (
              <>
                {heightName(bar, kind)}
                {bar.zero && <small className={styles.aside}> {t('all.zero')}</small>}
                {!bar.last && <small className={styles.aside}> {t('all.earlier')}</small>}
              </>
            ),
          },
          { key: 'read', head: t('all.read'), numeric: true, cell: (bar) => <b>{signed(bar.measured)}</b> },
          {
            key: 'said',
            head: t('all.said'),
            whole: true,
            cell: (bar) => (
              <Said p={said.get(keyOf(bar))} decidable={verdict?.decidable === true} missCost={missCost} />
            ),
          },
          ...expected,
          {
            key: 'scatter',
            head: t('all.scatter'),
            numeric: true,
            cell: ({ scatter }) => `±${bareMillimetres(scatter)}`,
          },
          {
            key: 'setup',
            head: t('all.setup'),
            whole: true,
            cell: ({ setup, gauge, technician }) => `${setup}, ${gauge}, ${technician}`,
          },
        ]}
      />
    </Panel>
  );
});

interface SaidProps {
  p: Record<Cause, number> | undefined;
  decidable: boolean;
  missCost: number;
}

function Said({ p, decidable, missCost }: SaidProps) {
  if (p === undefined) return words('evidence')('all.notJudged');
  const call = decidable ? callOf(p, missCost) : 'undecided';
  const leading = CAUSES.filter((cause) => p[cause] >= 0.1).sort((a, b) => p[b] - p[a]);
  return (
    <span className={styles.said}>
      <Tag name={CALL_GLYPHS[call]}>{callName(call)}</Tag>
      {leading.map((cause) => `${causeInSentence(cause)} ${probability(p[cause])}`).join(', ')}
    </span>
  );
}

const keyOf = ({ setup, point, side }: Pick<Bar, 'setup' | 'point' | 'side'>): string =>
  JSON.stringify([setup, point, side]);

function saidOf(verdict: RoundVerdict | null, kind: Kind): Map<string, Record<Cause, number>> {
  const heights =
    kind === 'height'
      ? (verdict?.heights ?? [])
      : (verdict?.centerline ?? []).map((pin) => ({ ...pin, side: 'L' as const }));
  return new Map(heights.map((height) => [keyOf(height), height.p]));
}
