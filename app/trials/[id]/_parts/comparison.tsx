import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import prose from '@/app/_look/prose.module.css';
import { signed } from '@/app/_words/numbers';
import {
  comparisonOf,
  getTrial,
  type TrainingComparison,
  type TrialRow,
  type TrialView,
  type Viewer,
} from '@/lib/access';
import { trialAddress } from '@/app/trials/_parts/words';

interface ComparisonProps {
  viewer: Viewer;
  trial: TrialView;
  /** Trials that may be held against this one. */
  earlier: TrialRow[];
  /** Which is. */
  before: number | null;
}

/** What changed since an earlier trial of the same people and points: a training, say. */
export async function Comparison({ viewer, trial, earlier, before }: ComparisonProps) {
  if (earlier.length === 0)
    return (
      <Panel id="before" title="Before and after">
        <p>
          There is no earlier trial with anybody of this one. To know whether a training changed something,
          plan the same again after it.
        </p>
      </Panel>
    );
  const first = before === null ? null : await getTrial(viewer, before);
  return (
    <Panel
      id="before"
      title="Before and after"
      note="Holds this trial against an earlier one, person by person. The vehicle need not be the same where others took part in both: their mean change is taken off the bias."
    >
      <form className={form.form} action={`${trialAddress(trial.id)}#before`} method="get">
        <Field label="Earlier trial" id="with">
          <select id="with" name="with" defaultValue={before ?? undefined}>
            {earlier.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </Field>
        <button type="submit" className={button.button}>
          Compare
        </button>
      </form>
      {first !== null && <Compared comparisons={comparisonOf(viewer, { before: first, after: trial })} />}
    </Panel>
  );
}

function Compared({ comparisons }: { comparisons: TrainingComparison[] }) {
  if (comparisons.length === 0) return <p>Nobody has a complete hanging in both trials yet.</p>;
  return (
    <>
      <div className={prose.prose}>
        {comparisons.map(({ person, sentences }) => (
          <section key={person}>
            <h3>{person}</h3>
            <ul>
              {sentences.map((sentence) => (
                <li key={sentence}>{sentence}</li>
              ))}
            </ul>
          </section>
        ))}
      </div>
      <Table
        caption="After against before, with 95 % intervals; 1.00 is no change of scatter, 0.00 mm none of the bias"
        rows={comparisons}
        rowKey={({ person }) => person}
        columns={[
          { key: 'person', head: 'Technician', names: true, cell: ({ person }) => person },
          {
            key: 'reading',
            head: 'Reading again, ratio',
            numeric: true,
            cell: ({ reading }) => times(reading),
          },
          {
            key: 'hanging',
            head: 'Hanging and reading, ratio',
            numeric: true,
            cell: ({ hanging }) => times(hanging),
          },
          { key: 'bias', head: 'Change of bias, mm', numeric: true, cell: ({ bias }) => shift(bias) },
        ]}
      />
    </>
  );
}

type Change = TrainingComparison['bias'];
const told = ({ value, low, high }: Change, print: (number: number) => string) =>
  value === null || low === null || high === null
    ? 'none'
    : `${print(value)} (${print(low)} to ${print(high)})`;
const times = (change: Change) => told(change, (ratio) => ratio.toFixed(2));
const shift = (change: Change) => told(change, (mm) => signed(mm, 2));
