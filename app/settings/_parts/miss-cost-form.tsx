import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import styles from './miss-cost-form.module.css';
import { MISS_COST_RANGE } from '@/lib/access';
import { words } from '@/app/_words/words';

/** A plain form, so that it works without scripts. */
export function MissCostForm({ cost }: { cost: number }) {
  const t = words('settings');
  return (
    <form className={styles.form} action="/settings/miss-cost" method="post">
      <Field label={t('missCost.label', MISS_COST_RANGE)} id="cost">
        <input
          id="cost"
          name="cost"
          type="number"
          inputMode="decimal"
          min={MISS_COST_RANGE.least}
          max={MISS_COST_RANGE.most}
          step="any"
          required
          defaultValue={cost}
        />
      </Field>
      <button type="submit" className={button.strong}>
        {t('missCost.set')}
      </button>
    </form>
  );
}
