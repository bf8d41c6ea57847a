import { Fragment, type ClipboardEvent } from 'react';
import type { Speech } from '@/app/_words/speech';
import type { Say } from '@/app/sheets/_parts/say';
import type { Remark } from '@/lib/measure/sheet';
import { Cell } from './cell';
import styles from './editor.module.css';
import { Remarks } from './remark-rows';

export interface GridColumn<Column extends string> {
  column: Column;
  head: string;
  choices?: readonly (readonly [word: string, shown: string])[];
  tick?: boolean;
  numeric?: boolean;
}

interface GridProps<Column extends string> {
  block: 'points' | 'lengths';
  caption: string;
  columns: readonly GridColumn<Column>[];
  rows: readonly Record<Column, string>[];
  /** Name of a field of the form. */
  field: (row: number, column: Column) => string;
  remarks: readonly Remark[];
  /** What stands behind a row, or null. */
  behind?: (row: number) => string | null;
  behindHead?: string;
  say: Say;
  speech: Speech;
  onChange: (row: number, column: Column, value: string) => void;
  onPaste: (row: number, column: Column, event: ClipboardEvent<HTMLElement>) => void;
}

/** Rows of fields as a table at the desk, each row a card on a phone. */
export function Grid<Column extends string>({
  block,
  caption,
  columns,
  rows,
  field,
  remarks,
  behind,
  behindHead,
  say,
  speech,
  onChange,
  onPaste,
}: GridProps<Column>) {
  const width = columns.length + 1 + (behind === undefined ? 0 : 1);
  return (
    <table className={styles.grid} data-block={block}>
      <caption className="out-of-sight">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{say('grid.row')}</th>
          {columns.map(({ column, head }) => (
            <th key={column} scope="col">
              {head}
            </th>
          ))}
          {behind !== undefined && <th scope="col">{behindHead}</th>}
        </tr>
      </thead>
      <tbody>
        {rows.map((row, index) => {
          const here = remarks.filter(({ at }) => at?.block === block && at.row === index);
          const told = here.length === 0 ? undefined : `${block}-${index}-told`;
          return (
            <Fragment key={index}>
              <tr data-row={`${block} ${index}`}>
                <th scope="row">{index + 1}</th>
                {columns.map(({ column, head, choices, tick, numeric }) => (
                  <td key={column} data-column={column}>
                    <span className={styles.cellHead} aria-hidden="true">
                      {head}
                    </span>
                    <Cell
                      name={field(index, column)}
                      label={say(`grid.${block}`, { head, row: index + 1 })}
                      value={row[column]}
                      choices={choices}
                      tick={tick ?? false}
                      numeric={numeric ?? false}
                      wrong={here.some(({ at }) => at?.column === column)}
                      told={told}
                      onChange={(value) => onChange(index, column, value)}
                      onPaste={(event) => onPaste(index, column, event)}
                    />
                  </td>
                ))}
                {behind !== undefined && (
                  <td className={styles.behind} data-column="behind">
                    {behind(index)}
                  </td>
                )}
              </tr>
              {told !== undefined && (
                <tr className={styles.toldRow}>
                  <td colSpan={width} id={told}>
                    <Remarks remarks={here} say={say} speech={speech} />
                  </td>
                </tr>
              )}
            </Fragment>
          );
        })}
      </tbody>
    </table>
  );
}
