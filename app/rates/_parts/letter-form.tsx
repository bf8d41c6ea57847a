import { drawnOnce } from '@/app/_look/still';
import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import styles from '@/app/_look/filter-form.module.css';
import { Panel } from '@/app/_look/panel';
import { monthName } from '@/app/_words/times';
import { words } from '@/app/_words/words';
import type { RateJob } from '@/lib/assess/rates';

/** Asks for the letter of a month, the newest first; it works without a script. */
export const LetterForm = drawnOnce(function LetterForm({ jobs }: { jobs: readonly RateJob[] }) {
  const t = words('letter');
  const months = [...new Set(jobs.map(({ month }) => month))].sort().reverse();
  if (months.length === 0) return null;
  return (
    <div data-print="no">
      <Panel id="letter" title={t('panel')} note={t('note')}>
        <form className={styles.form} action="/rates/letter" method="get">
          <Field label={t('choose')} id="letter-month">
            <select id="letter-month" name="month" defaultValue={months[0]}>
              {months.map((month) => (
                <option key={month} value={month}>
                  {monthName(month)}
                </option>
              ))}
            </select>
          </Field>
          <div className={styles.buttons}>
            <button type="submit" className={button.strong}>
              {t('make')}
            </button>
          </div>
        </form>
      </Panel>
    </div>
  );
});
