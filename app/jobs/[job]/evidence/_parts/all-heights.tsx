import { Panel } from '@/app/_look/panel';
import { Table, type Column } from '@/app/_look/table';
import { Tag } from '@/app/_look/tag';
import { heightAnchor } from '@/app/_words/address';
import { probability, signed } from '@/app/_words/numbers';
import { CALL_GLYPHS, callName } from '@/app/_words/verdicts';
import { callOf, type RoundVerdict } from '@/lib/assess';
import { heightName, type Bar, type Kind, type RoundEvidence } from '@/lib/assess/evidence';
import { CAUSES, type Cause } from '@/lib/measure';
import styles from './all-heights.module.css';
import { letterOf } from './letters';

interface AllHeightsProps {
  id: string;
  title: string;
  evidence: RoundEvidence;
  verdict: RoundVerdict | null;
  missCost: number;
  kind: Kind;
}

/** Every height: what was read, what each explanation leads to expect, and what is said of it. */
export function AllHeights({ id, title, evidence, verdict, missCost, kind }: AllHeightsProps) {
  const [first, ...others] = evidence.hypotheses;
  if (first === undefined) return null;
  const told = toldOf(verdict, kind);
  const expected = [first, ...others].map(({ bars }, index): Column<Bar> => ({
    key: letterOf(index),
    head: `Expected under ${letterOf(index)}`,
    numeric: true,
    cell: (bar) => {
      const same = bars.find((one) => keyOf(one) === keyOf(bar));
      return same === undefined ? '' : signed(same.expected);
    },
  }));
  return (
    <Panel
      id={id}
      title={title}
      note="Scatter is one standard deviation of ordinary setting, reading and body: what a difference between read and expected is to be held against."
    >
      <Table
        caption="Deviations from the sheet, millimetres"
        rows={first.bars}
        rowKey={keyOf}
        rowId={(bar) => heightAnchor(kind === 'height' ? bar : { ...bar, side: 'C' })}
        columns={[
          {
            key: 'height',
            head: kind === 'height' ? 'Height' : 'Centre pin',
            names: true,
            cell: (bar) => (
              <>
                {heightName(bar, kind)}
                {bar.zero && <small className={styles.aside}> zero station</small>}
                {!bar.last && <small className={styles.aside}> earlier setup</small>}
              </>
            ),
          },
          { key: 'read', head: 'Read', numeric: true, cell: (bar) => <b>{signed(bar.measured)}</b> },
          {
            key: 'said',
            head: 'Gauge or body',
            whole: true,
            cell: (bar) => (
              <Said p={told.get(keyOf(bar))} decidable={verdict?.decidable === true} missCost={missCost} />
            ),
          },
          ...expected,
          {
            key: 'scatter',
            head: 'Scatter',
            numeric: true,
            cell: ({ scatter }) => `±${signed(scatter).replace('+', '')}`,
          },
          {
            key: 'setup',
            head: 'Setup',
            whole: true,
            cell: ({ setup, gauge, technician }) => `${setup}, ${gauge}, ${technician}`,
          },
        ]}
      />
    </Panel>
  );
}

interface SaidProps {
  p: Record<Cause, number> | undefined;
  decidable: boolean;
  missCost: number;
}

function Said({ p, decidable, missCost }: SaidProps) {
  if (p === undefined) return 'not judged';
  const call = decidable ? callOf(p, missCost) : 'undecided';
  const leading = CAUSES.filter((cause) => p[cause] >= 0.1).sort((a, b) => p[b] - p[a]);
  return (
    <span className={styles.said}>
      <Tag name={CALL_GLYPHS[call]}>{callName(call)}</Tag>
      {leading.map((cause) => `${cause} ${probability(p[cause])}`).join(', ')}
    </span>
  );
}

const keyOf = ({ setup, point, side }: Pick<Bar, 'setup' | 'point' | 'side'>): string =>
  JSON.stringify([setup, point, side]);

function toldOf(verdict: RoundVerdict | null, kind: Kind): Map<string, Record<Cause, number>> {
  const heights =
    kind === 'height'
      ? (verdict?.heights ?? [])
      : (verdict?.centerline ?? []).map((pin) => ({ ...pin, side: 'L' as const }));
  return new Map(heights.map((height) => [keyOf(height), height.p]));
}
