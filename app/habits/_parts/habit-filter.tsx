import { drawnOnce } from '@/app/_look/still';
import Link from 'next/link';
import { MonthFields } from '@/app/_figures/stretch/month-fields';
import button from '@/app/_look/button.module.css';
import { Choice } from '@/app/_look/choice';
import styles from '@/app/_look/filter-form.module.css';
import { Note } from '@/app/_look/note';
import { Panel } from '@/app/_look/panel';
import { words } from '@/app/_words/words';
import type { AskedHabits } from './asked-habits';
import { isSpan, spanNote } from './habit-question';

interface HabitFilterProps extends Pick<AskedHabits, 'question' | 'notes' | 'choices'> {
  /** The page that is asked. */
  to: string;
  /** Whose may be shown; empty where only one technician's are. */
  technicians: readonly string[];
}

/** Asks by address (GET), so that a view can be bookmarked, sent on and used without a script. */
export const HabitFilter = drawnOnce(function HabitFilter({
  to,
  question,
  notes,
  choices,
  technicians,
}: HabitFilterProps) {
  const t = words('habits');
  const plain = (names: readonly string[]) => names.map((name) => [name, name] as const);
  return (
    <Panel
      id="filter"
      title={t('filter.title')}
      note={isSpan(question) ? spanNote(question, choices) : t('filter.noteAll')}
    >
      {notes.map((note) => (
        <Note key={note}>
          <p>{note}</p>
        </Note>
      ))}
      <form
        className={styles.form}
        action={to}
        method="get"
        role="search"
        aria-label={t('filter.title')}
        data-print="no"
      >
        <MonthFields asked={question} months={choices.months} />
        <Choice
          name="sheet"
          label={t('filter.sheet')}
          any={t('filter.any')}
          value={question.sheet}
          choices={plain(choices.sheets)}
        />
        {technicians.length > 0 && (
          <Choice
            name="technician"
            label={t('technician')}
            any={t('filter.everybody')}
            value={question.technician}
            choices={plain(technicians)}
          />
        )}
        <div className={styles.buttons}>
          <button type="submit" className={button.strong}>
            {t('filter.show')}
          </button>
          <Link href={to} className={button.button}>
            {t('filter.all')}
          </Link>
        </div>
      </form>
    </Panel>
  );
});
