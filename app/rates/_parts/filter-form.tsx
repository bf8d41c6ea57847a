import { drawnOnce } from '@/app/_look/still';
import Link from 'next/link';
import button from '@/app/_look/button.module.css';
import { Choice } from '@/app/_look/choice';
import { Field } from '@/app/_look/field';
import { onceFor } from '@/lib/memory';
import { sectionName } from '@/app/_words/jobs';
import { monthName } from '@/app/_words/times';
import { words } from '@/app/_words/words';
import { RATE_GROUPINGS, type RateJob } from '@/lib/assess/rates';
import { SECTIONS } from '@/lib/measure';
import { rateAddress, type RateQuestion } from './question';
import styles from '@/app/_look/filter-form.module.css';
import { inOrder } from '@/app/_words/in-order';
import { groupingInSentence } from './words';

interface FilterFormProps {
  question: RateQuestion;
  /** All jobs of the shop: what may be chosen is what stands in them. */
  jobs: readonly RateJob[];
}

/** What stands in some jobs. */
const namesIn = onceFor((jobs: readonly RateJob[]) => ({
  months: sorted(jobs.map(({ month }) => month)),
  technicians: sorted(jobs.map(({ technician }) => technician)),
  gauges: sorted(jobs.flatMap(({ gauges }) => gauges)),
  sheets: sorted(jobs.flatMap(({ sheet }) => sheet ?? [])),
}));

const itself = (name: string) => [name, name] as const;

/** Asks by address (GET), so that a view can be bookmarked, sent on and used without a script. */
export const FilterForm = drawnOnce(function FilterForm({ question, jobs }: FilterFormProps) {
  const t = words('rates');
  const there = namesIn(jobs);
  const months = there.months.map((month) => [month, monthName(month)] as const);
  return (
    <form
      className={styles.form}
      action="/rates"
      method="get"
      role="search"
      aria-label={t('filter.name')}
      data-print="no"
    >
      <Field label={t('filter.by')} id="by">
        <select id="by" name="by" defaultValue={question.by}>
          {RATE_GROUPINGS.map((by) => (
            <option key={by} value={by}>
              {t('filter.byOne', { by: groupingInSentence(by) })}
            </option>
          ))}
        </select>
      </Field>
      <Choice
        name="from"
        label={t('filter.from')}
        any={t('filter.first')}
        value={question.from}
        choices={months}
      />
      <Choice name="to" label={t('filter.to')} any={t('filter.last')} value={question.to} choices={months} />
      <Choice
        name="technician"
        label={t('filter.technician')}
        any={t('filter.anyone')}
        value={question.technician}
        choices={there.technicians.map(itself)}
      />
      <Choice
        name="gauge"
        label={t('filter.gauge')}
        any={t('filter.any')}
        value={question.gauge}
        choices={there.gauges.map(itself)}
      />
      <Choice
        name="sheet"
        label={t('filter.sheet')}
        any={t('filter.any')}
        value={question.sheet}
        choices={there.sheets.map(itself)}
      />
      <Choice
        name="section"
        label={t('filter.section')}
        any={t('filter.whole')}
        value={question.section}
        choices={SECTIONS.map((section) => [section, sectionName(section)] as const)}
      />
      <div className={styles.buttons}>
        <button type="submit" className={button.strong}>
          {t('filter.show')}
        </button>
        <Link
          href={rateAddress('/rates', {
            by: question.by,
            from: undefined,
            to: undefined,
            technician: undefined,
            gauge: undefined,
            sheet: undefined,
            section: undefined,
          })}
          className={button.button}
        >
          {t('filter.all')}
        </Link>
      </div>
    </form>
  );
});

const sorted = (names: readonly string[]): string[] => [...new Set(names)].sort(inOrder);
