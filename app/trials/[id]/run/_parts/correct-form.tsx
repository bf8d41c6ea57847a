import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import { unit } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import type { TrialView } from '@/lib/access';
import { trialAddress } from '@/app/trials/_parts/words';

/** Another value for a place that is filled; the one that stands there is not shown. */
export function CorrectForm({ trial }: { trial: TrialView }) {
  const t = words('trials');
  const latest = [...trial.filled].sort((a, b) => b.at - a.at);
  return (
    <form className={form.form} action={`${trialAddress(trial.id)}/run/correct`} method="post">
      <Field label={t('run.which')} id="place">
        <select id="place" name="place">
          {latest.map(({ run, repeat }) => (
            <option key={`${run} ${repeat}`} value={`${run} ${repeat}`}>
              {t('run.place', {
                run: String(run),
                point: trial.runs.find(({ order }) => order === run)?.point ?? '',
                repeat,
              })}
            </option>
          ))}
        </select>
      </Field>
      <Field label={t('run.read', { unit: unit() })} id="corrected">
        <input id="corrected" name="value" required inputMode="decimal" maxLength={12} autoComplete="off" />
      </Field>
      <Field label={t('run.why')} id="reason">
        <input id="reason" name="reason" required maxLength={200} autoComplete="off" />
      </Field>
      <button type="submit" className={button.button}>
        {t('run.correctIt')}
      </button>
    </form>
  );
}
