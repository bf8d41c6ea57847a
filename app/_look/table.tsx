import type { ReactNode } from 'react';
import { classNames } from './class-names';
import { ScrollFrame } from './scroll-frame';
import styles from './table.module.css';
import { words } from '@/app/_words/words';

export interface Column<Row> {
  /** Stable within the table. */
  key: string;
  head: ReactNode;
  cell: (row: Row) => ReactNode;
  /** Numbers stand to the right, in tabular figures. */
  numeric?: boolean;
  /** The cell that names its row. */
  names?: boolean;
  /** A name that may be long: it takes more than one line. */
  wraps?: boolean;
  /** Stays on one line. */
  whole?: boolean;
  sorted?: 'ascending' | 'descending' | undefined;
}

interface TableProps<Row> {
  caption: ReactNode;
  /** The caption is read aloud but not drawn, where a heading above says the same. */
  captionOutOfSight?: boolean;
  columns: Column<Row>[];
  rows: readonly Row[];
  rowKey: (row: Row) => string;
  rowId?: (row: Row) => string | undefined;
  /** Said in place of the table where there is no row. */
  empty?: ReactNode;
}

/** A table that scrolls within its own frame when the screen is narrower than its columns. */
export function Table<Row>({
  caption,
  captionOutOfSight = false,
  columns,
  rows,
  rowKey,
  rowId,
  empty,
}: TableProps<Row>) {
  if (rows.length === 0 && empty !== undefined) return <p className={styles.empty}>{empty}</p>;
  return (
    <ScrollFrame name={words('look')('table')}>
      <table className={styles.table}>
        <caption className={captionOutOfSight ? 'out-of-sight' : styles.caption}>
          <span className={styles.captionText}>{caption}</span>
        </caption>
        <thead>
          <tr>
            {columns.map((column) => (
              <th
                key={column.key}
                scope="col"
                className={classNames(column.numeric && styles.numeric)}
                aria-sort={column.sorted}
              >
                {column.head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={rowKey(row)} id={rowId?.(row)}>
              {columns.map((column) => {
                const names = classNames(
                  column.numeric && styles.numeric,
                  column.whole && styles.whole,
                  column.wraps && styles.wraps,
                );
                return column.names ? (
                  <th key={column.key} scope="row" className={names}>
                    {column.cell(row)}
                  </th>
                ) : (
                  <td key={column.key} className={names}>
                    {column.cell(row)}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollFrame>
  );
}
