import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import styles from '@/app/_look/filter-form.module.css';
import { words } from '@/app/_words/words';
import type { WhatIfAnswer } from '@/lib/assess/answers';

/** Which gauge is taken out of service; asks by address (GET). */
export function GaugeForm({ stored, without }: { stored: WhatIfAnswer; without: string | null }) {
  const { without: gauges, farthest, gauges: all } = stored;
  const t = words('whatIf');
  if (gauges.length === 0) return null;
  return (
    <>
      <form
        className={styles.form}
        action="/what-if"
        method="get"
        aria-label={t('form.name')}
        data-print="no"
      >
        <Field label={t('form.gauge')} id="without">
          <select id="without" name="without" defaultValue={without ?? undefined}>
            {gauges.map(({ gauge }) => (
              <option key={gauge} value={gauge}>
                {gauge === farthest ? t('form.farthest', { gauge }) : gauge}
              </option>
            ))}
          </select>
        </Field>
        <div className={styles.buttons}>
          <button type="submit" className={button.strong}>
            {t('form.show')}
          </button>
        </div>
      </form>
      {gauges.length < all && <p>{t('form.some', { all, shown: gauges.length })}</p>}
    </>
  );
}
