import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import styles from '@/app/_look/filter-form.module.css';
import type { WhatIfAnswer } from '@/lib/assess/answers';

/** Which gauge is taken out of service; asks by address (GET). */
export function GaugeForm({ stored, without }: { stored: WhatIfAnswer; without: string | null }) {
  const { without: gauges, farthest, gauges: all } = stored;
  if (gauges.length === 0) return null;
  return (
    <>
      <form className={styles.form} action="/what-if" method="get" aria-label="Which gauge" data-print="no">
        <Field label="Gauge out of service" id="without">
          <select id="without" name="without" defaultValue={without ?? undefined}>
            {gauges.map(({ gauge }) => (
              <option key={gauge} value={gauge}>
                {gauge}
                {gauge === farthest ? ' (reads farthest from the others)' : ''}
              </option>
            ))}
          </select>
        </Field>
        <div className={styles.buttons}>
          <button type="submit" className={button.strong}>
            Show
          </button>
        </div>
      </form>
      {gauges.length < all && (
        <p>
          Of {all} gauges, the {gauges.length} that read farthest from the others can be taken out here.
        </p>
      )}
    </>
  );
}
