import { drawnOnce } from '@/app/_look/still';
import Link from 'next/link';
import button from '@/app/_look/button.module.css';
import { Choice } from '@/app/_look/choice';
import { Field } from '@/app/_look/field';
import { outcomeName, sectionName, stageName } from '@/app/_words/jobs';
import { SECTIONS, STAGES } from '@/lib/measure';
import type { Question } from './question';
import styles from '@/app/_look/filter-form.module.css';
import { OUTCOMES } from '@/lib/access';
import { words } from '@/app/_words/words';

interface FilterFormProps {
  question: Question;
  sheets: string[];
  technicians: string[];
}

/** Asks by address (GET), so that a list can be bookmarked, sent on and used without a script. */
export const FilterForm = drawnOnce(function FilterForm({ question, sheets, technicians }: FilterFormProps) {
  const t = words('jobList');
  return (
    <form
      className={styles.form}
      action="/jobs"
      method="get"
      role="search"
      aria-label={t('filter.name')}
      data-print="no"
    >
      <Field label={t('filter.search')} id="search">
        <input id="search" name="search" type="search" defaultValue={question.search} maxLength={100} />
      </Field>
      <Choice
        name="outcome"
        label={t('outcome')}
        any={t('filter.anyOutcome')}
        value={question.outcome}
        choices={OUTCOMES.map((o) => [o, outcomeName(o)])}
      />
      <Choice
        name="stage"
        label={t('lastRound')}
        any={t('filter.anyStage')}
        value={question.stage}
        choices={STAGES.map((s) => [s, stageName(s)])}
      />
      <Choice
        name="section"
        label={t('filter.section')}
        any={t('filter.anySection')}
        value={question.section}
        choices={SECTIONS.map((s) => [s, sectionName(s)])}
      />
      <Choice
        name="technician"
        label={t('filter.technician')}
        any={t('filter.anyone')}
        value={question.technician}
        choices={technicians.map((code) => [code, code])}
      />
      <Choice
        name="sheet"
        label={t('sheet')}
        any={t('filter.anySheet')}
        value={question.sheet}
        choices={sheets.map((s) => [s, s])}
      />
      <Field label={t('filter.from')} id="from">
        <input id="from" name="from" type="date" defaultValue={question.from} />
      </Field>
      <Field label={t('filter.to')} id="to">
        <input id="to" name="to" type="date" defaultValue={question.to} />
      </Field>
      {question.sort !== undefined && <input type="hidden" name="sort" value={question.sort} />}
      {question.direction !== undefined && (
        <input type="hidden" name="direction" value={question.direction} />
      )}
      <div className={styles.buttons}>
        <button type="submit" className={button.strong}>
          {t('filter.show')}
        </button>
        <Link href="/jobs" className={button.button}>
          {t('filter.showAll')}
        </Link>
      </div>
    </form>
  );
});
