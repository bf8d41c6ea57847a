import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import prose from '@/app/_look/prose.module.css';
import { decimal, signed, signedMillimetres, unit } from '@/app/_words/numbers';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
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
  const t = words('trials');
  if (earlier.length === 0)
    return (
      <Panel id="before" title={t('before.title')}>
        <p>{t('before.none')}</p>
      </Panel>
    );
  const first = before === null ? null : await getTrial(viewer, before);
  return (
    <Panel id="before" title={t('before.title')} note={t('before.note')}>
      <form className={form.form} action={`${trialAddress(trial.id)}#before`} method="get">
        <Field label={t('before.earlier')} id="with">
          <select id="with" name="with" defaultValue={before ?? undefined}>
            {earlier.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </Field>
        <button type="submit" className={button.button}>
          {t('before.compare')}
        </button>
      </form>
      {first !== null && <Compared comparisons={comparisonOf(viewer, { before: first, after: trial })} />}
    </Panel>
  );
}

function Compared({ comparisons }: { comparisons: TrainingComparison[] }) {
  const t = words('trials');
  if (comparisons.length === 0) return <p>{t('before.nobody')}</p>;
  return (
    <>
      <div className={prose.prose}>
        {comparisons.map(({ person, sentences }) => (
          <section key={person}>
            <h3>{person}</h3>
            <ul>
              {sentences.map((sentence) => (
                <li key={sentence}>{told(sentence)}</li>
              ))}
            </ul>
          </section>
        ))}
      </div>
      <Table
        caption={t('before.caption', { one: decimal(1, 2), none: signedMillimetres(0, 2) })}
        rows={comparisons}
        rowKey={({ person }) => person}
        columns={[
          { key: 'person', head: t('technician'), names: true, cell: ({ person }) => person },
          {
            key: 'reading',
            head: t('before.reading'),
            numeric: true,
            cell: ({ reading }) => times(reading),
          },
          {
            key: 'hanging',
            head: t('before.hanging'),
            numeric: true,
            cell: ({ hanging }) => times(hanging),
          },
          {
            key: 'bias',
            head: t('before.bias', { unit: unit() }),
            numeric: true,
            cell: ({ bias }) => shift(bias),
          },
        ]}
      />
    </>
  );
}

type Change = TrainingComparison['bias'];
const changeWords = ({ value, low, high }: Change, print: (number: number) => string) =>
  value === null || low === null || high === null
    ? words('trials')('none')
    : words('trials')('before.change', { value: print(value), low: print(low), high: print(high) });
const times = (change: Change) => changeWords(change, (ratio) => decimal(ratio, 2));
const shift = (change: Change) => changeWords(change, (mm) => signed(mm, 2));
