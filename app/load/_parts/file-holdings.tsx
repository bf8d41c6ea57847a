import { FiguresRow } from '@/app/_look/figures-row';
import { Note } from '@/app/_look/note';
import { Panel } from '@/app/_look/panel';
import { count, grouped } from '@/app/_words/numbers';
import { day } from '@/app/_words/times';
import type { CheckedFile } from '../_staging/staged-file';
import styles from './file-holdings.module.css';

const SEPARATORS = { comma: 'commas', semicolon: 'semicolons', tab: 'tabs' } as const;

/** What was found in a file, before anything is stored. */
export function FileHoldings({ summary, timeZone }: { summary: CheckedFile['summary']; timeZone: string }) {
  return (
    <Panel id="holdings" title="What the file holds">
      <FiguresRow
        figures={[
          {
            name: 'Readings',
            value: grouped(summary.readings),
            detail: `${count(summary.lines, 'line')}, fields set apart by ${SEPARATORS[summary.separator]}${summary.decimalComma ? ', decimal comma' : ''}`,
          },
          { name: 'Jobs', value: grouped(summary.jobs), detail: count(summary.rounds, 'round') },
          { name: 'Setups', value: grouped(summary.setups) },
          {
            name: 'From and to',
            value: (
              <span className={styles.days}>
                {summary.from === null || summary.to === null
                  ? 'no time read'
                  : `${day(summary.from, timeZone)} – ${day(summary.to, timeZone)}`}
              </span>
            ),
          },
        ]}
      />
      <dl className={styles.names}>
        <Names name="Technicians" labels={summary.technicians} />
        <Names name="Gauges" labels={summary.gauges} />
        <Names name="Sheets" labels={summary.sheets} />
        {summary.ignoredColumns.length > 0 && (
          <Names name="Columns not read" labels={summary.ignoredColumns} />
        )}
      </dl>
      {summary.notes.length > 0 && (
        <Note>
          {summary.notes.map((note) => (
            <p key={note}>{note}</p>
          ))}
        </Note>
      )}
    </Panel>
  );
}

const SHOWN = 40;

function Names({ name, labels }: { name: string; labels: string[] }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        {labels.length === 0 ? 'none named' : labels.slice(0, SHOWN).join(', ')}
        {labels.length > SHOWN && ` and ${labels.length - SHOWN} more`}
      </dd>
    </div>
  );
}
