import { FiguresRow } from '@/app/_look/figures-row';
import { Note } from '@/app/_look/note';
import { Panel } from '@/app/_look/panel';
import { grouped } from '@/app/_words/numbers';
import { day } from '@/app/_words/times';
import type { CheckedFile } from '../_staging/staged-file';
import styles from './file-holdings.module.css';
import { words } from '@/app/_words/words';
import { told } from '@/app/_words/told';

/** What was found in a file, before anything is stored. */
export function FileHoldings({ summary, timeZone }: { summary: CheckedFile['summary']; timeZone: string }) {
  const t = words('load');
  return (
    <Panel id="holdings" title={t('holdings.title')}>
      <FiguresRow
        figures={[
          {
            name: t('holdings.readings'),
            value: grouped(summary.readings),
            detail: t(summary.decimalComma ? 'holdings.linesWithComma' : 'holdings.lines', {
              n: summary.lines,
              separator: t(`holdings.separators.${summary.separator}`),
            }),
          },
          {
            name: t('holdings.jobs'),
            value: grouped(summary.jobs),
            detail: t('holdings.rounds', { n: summary.rounds }),
          },
          { name: t('holdings.setups'), value: grouped(summary.setups) },
          {
            name: t('holdings.span'),
            value: (
              <span className={styles.days}>
                {summary.from === null || summary.to === null
                  ? t('holdings.noTime')
                  : `${day(summary.from, timeZone)} – ${day(summary.to, timeZone)}`}
              </span>
            ),
          },
        ]}
      />
      <dl className={styles.names}>
        <Names name={t('holdings.technicians')} labels={summary.technicians} />
        <Names name={t('holdings.gauges')} labels={summary.gauges} />
        <Names name={t('holdings.sheets')} labels={summary.sheets} />
        {summary.ignoredColumns.length > 0 && (
          <Names name={t('holdings.ignored')} labels={summary.ignoredColumns} />
        )}
      </dl>
      {summary.notes.length > 0 && (
        <Note>
          {summary.notes.map((note) => (
            <p key={note}>{told(note)}</p>
          ))}
        </Note>
      )}
    </Panel>
  );
}

const SHOWN = 40;

function Names({ name, labels }: { name: string; labels: string[] }) {
  const t = words('load');
  const shown = labels.slice(0, SHOWN).join(', ');
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        {labels.length === 0
          ? t('holdings.none')
          : labels.length > SHOWN
            ? t('holdings.more', { shown, rest: labels.length - SHOWN })
            : shown}
      </dd>
    </div>
  );
}
