import { Table, type Column } from '@/app/_look/table';
import { Tag } from '@/app/_look/tag';
import { MEASURES, type Figure, type Measure, type WhatIfRow } from '@/lib/assess/what-if';
import { changeWord, digitsFor, MEASURE_NAMES, plain, shown, withSign } from './measures';
import styles from './scenario-tables.module.css';

/** Every scenario with what it is expected to give per 100 jobs. */
export function ScenarioTable({ rows }: { rows: readonly WhatIfRow[] }) {
  return (
    <Table
      caption="Per 100 jobs, with 95 % intervals"
      rows={rows}
      rowKey={({ name }) => name}
      columns={[
        SCENARIO,
        ...MEASURES.map((measure): Column<WhatIfRow> => ({
          key: measure,
          head: MEASURE_NAMES[measure],
          numeric: true,
          cell: ({ figures }) => (
            <Told measure={measure} figure={shown(measure, figures[measure])} print={plain} />
          ),
        })),
      ]}
    />
  );
}

/** The same against as now: better or worse is said only where the interval leaves out zero. */
export function ChangeTable({ rows }: { rows: readonly WhatIfRow[] }) {
  return (
    <Table
      caption="Change against as now, per 100 jobs, with 95 % intervals of the change"
      rows={rows.filter(({ change }) => change !== null)}
      rowKey={({ name }) => name}
      columns={[
        SCENARIO,
        ...MEASURES.map((measure): Column<WhatIfRow> => ({
          key: measure,
          head: MEASURE_NAMES[measure],
          numeric: true,
          cell: ({ change }) =>
            change === null ? 'none' : <Change measure={measure} figure={change[measure]} />,
        })),
      ]}
    />
  );
}

const SCENARIO: Column<WhatIfRow> = {
  key: 'name',
  head: 'If',
  names: true,
  wraps: true,
  cell: ({ name }) => <span className={styles.name}>{name}</span>,
};

function Change({ measure, figure }: { measure: Measure; figure: Figure }) {
  const word = changeWord(figure);
  return (
    <>
      <Told measure={measure} figure={shown(measure, figure)} print={withSign} />
      <span className={styles.word}>
        {word === 'better' || word === 'worse' ? (
          <Tag name={word === 'better' ? 'falling' : 'rising'}>{word}</Tag>
        ) : (
          word
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
        {print(figure.low, digits)} to {print(figure.high, digits)}
      </span>
    </>
  );
}
