import Link from 'next/link';
import button from '@/app/_look/button.module.css';
import { Choice } from '@/app/_look/choice';
import { Field } from '@/app/_look/field';
import { outcomeName, sectionName, stageName } from '@/app/_words/jobs';
import { SECTIONS, STAGES } from '@/lib/measure';
import type { Question } from './question';
import styles from '@/app/_look/filter-form.module.css';
import { OUTCOMES } from '@/lib/access';

interface FilterFormProps {
  question: Question;
  sheets: string[];
  technicians: string[];
}

/** Asks by address (GET), so that a list can be bookmarked, sent on and used without a script. */
export function FilterForm({ question, sheets, technicians }: FilterFormProps) {
  return (
    <form
      className={styles.form}
      action="/jobs"
      method="get"
      role="search"
      aria-label="Find jobs"
      data-print="no"
    >
      <Field label="Job number or sheet" id="search">
        <input id="search" name="search" type="search" defaultValue={question.search} maxLength={100} />
      </Field>
      <Choice
        name="outcome"
        label="Outcome"
        any="any outcome"
        value={question.outcome}
        choices={OUTCOMES.map((o) => [o, outcomeName(o)])}
      />
      <Choice
        name="stage"
        label="Last round"
        any="before or after"
        value={question.stage}
        choices={STAGES.map((s) => [s, stageName(s)])}
      />
      <Choice
        name="section"
        label="Out after repair in"
        any="any section"
        value={question.section}
        choices={SECTIONS.map((s) => [s, sectionName(s)])}
      />
      <Choice
        name="technician"
        label="Technician"
        any="anyone"
        value={question.technician}
        choices={technicians.map((t) => [t, t])}
      />
      <Choice
        name="sheet"
        label="Sheet"
        any="any"
        value={question.sheet}
        choices={sheets.map((s) => [s, s])}
      />
      <Field label="First read from" id="from">
        <input id="from" name="from" type="date" defaultValue={question.from} />
      </Field>
      <Field label="First read until" id="to">
        <input id="to" name="to" type="date" defaultValue={question.to} />
      </Field>
      {question.sort !== undefined && <input type="hidden" name="sort" value={question.sort} />}
      {question.direction !== undefined && (
        <input type="hidden" name="direction" value={question.direction} />
      )}
      <div className={styles.buttons}>
        <button type="submit" className={button.strong}>
          Show
        </button>
        <Link href="/jobs" className={button.button}>
          Show all
        </Link>
      </div>
    </form>
  );
}
