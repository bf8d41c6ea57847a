import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import { MISS_COST_RANGE, type Person } from '@/lib/store';
import styles from './miss-cost-form.module.css';

interface MissCostFormProps {
  cost: number;
  /** Those who may set it; without anybody the form does not ask. */
  managers: Person[];
}

/** A plain form, so that it works without scripts. */
export function MissCostForm({ cost, managers }: MissCostFormProps) {
  return (
    <form className={styles.form} action="/settings/miss-cost" method="post">
      <Field
        label={`Missing damage costs as much as so many needless re-hangs (${MISS_COST_RANGE.least} to ${MISS_COST_RANGE.most})`}
        id="cost"
      >
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
      {managers.length > 0 && (
        <Field label="Set by" id="by">
          <select id="by" name="by" required defaultValue="">
            <option value="" disabled>
              choose
            </option>
            {managers.map(({ code, name }) => (
              <option key={code} value={code}>
                {code} {name}
              </option>
            ))}
          </select>
        </Field>
      )}
      <button type="submit" className={button.strong}>
        Set it
      </button>
    </form>
  );
}
