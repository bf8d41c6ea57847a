import { drawnOnce } from '@/app/_look/still';
import { Table, type Column } from '@/app/_look/table';
import { Tag } from '@/app/_look/tag';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import { MEASURES, type Figure, type Measure, type WhatIfRow } from '@/lib/assess/what-if';
import { changeSaid, changeWord, digitsFor, measureName, plain, shown, withSign } from './measures';
import styles from './scenario-tables.module.css';

/** Every scenario with what it is expected to give per 100 jobs. */
export const ScenarioTable = drawnOnce(function ScenarioTable({ rows }: { rows: readonly WhatIfRow[] }) {
  return (
    <Table
      caption={words('whatIf')('scenarios.caption')}
      rows={rows}
      rowKey={({ name }) => name}
      columns={[
        scenario(),
        ...MEASURES.map((measure): Column<WhatIfRow> => ({
          key: measure,
          head: measureName(measure),
          numeric: true,
          cell: ({ figures }) => (
            <Told measure={measure} figure={shown(measure, figures[measure])} print={plain} />
          ),
        })),
      ]}
    />
  );
});

/** The same against as now: better or worse is said only where the interval leaves out zero. */
export const ChangeTable = drawnOnce(function ChangeTable({ rows }: { rows: readonly WhatIfRow[] }) {
  const t = words('whatIf');
  return (
    <Table
      caption={t('change.caption')}
      rows={rows.filter(({ change }) => change !== null)}
      rowKey={({ name }) => name}
      columns={[
        scenario(),
        ...MEASURES.map((measure): Column<WhatIfRow> => ({
          key: measure,
          head: measureName(measure),
          numeric: true,
          cell: ({ change }) =>
            change === null ? t('none') : <Change measure={measure} figure={change[measure]} />,
        })),
      ]}
    />
  );
});

const scenario = (): Column<WhatIfRow> => ({
  key: 'name',
  head: words('whatIf')('scenarios.if'),
  names: true,
  wraps: true,
  cell: ({ name }) => <span className={styles.name}>{told(name)}</span>,
});

function Change({ measure, figure }: { measure: Measure; figure: Figure }) {
  const word = changeWord(figure);
  return (
    <>
      <Told measure={measure} figure={shown(measure, figure)} print={withSign} />
      <span className={styles.word}>
        {word === 'better' || word === 'worse' ? (
          <Tag name={word === 'better' ? 'falling' : 'rising'} doubtful={word === 'worse'}>
            {changeSaid(word)}
          </Tag>
        ) : (
          changeSaid(word)
        )}
      </span>
    </>
  );
}

interface ToldProps {
  measure: Measure;
  figure: Figure;
  print: (value: number, digits: number) => string;
}

function Told({ measure, figure, print }: ToldProps) {
  const digits = digitsFor(measure, figure);
  return (
    <>
      {print(figure.value, digits)}
      <span className={styles.interval}>
        {words('whatIf')('range', {
          low: print(figure.low, digits),
          high: print(figure.high, digits),
        })}
      </span>
    </>
  );
}
