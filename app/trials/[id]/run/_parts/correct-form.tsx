import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import type { TrialView } from '@/lib/access';
import { trialAddress } from '@/app/trials/_parts/words';

/** Another value for a place that is filled; the one that stands there is not shown. */
export function CorrectForm({ trial }: { trial: TrialView }) {
  const latest = [...trial.filled].sort((a, b) => b.at - a.at);
  return (
    <form className={form.form} action={`${trialAddress(trial.id)}/run/correct`} method="post">
      <Field label="Which reading (the last entered first)" id="place">
        <select id="place" name="place">
          {latest.map(({ run, repeat }) => (
            <option key={`${run} ${repeat}`} value={`${run} ${repeat}`}>
              Run {run}, point {trial.runs.find(({ order }) => order === run)?.point}, reading {repeat}
            </option>
          ))}
        </select>
      </Field>
      <Field label="What was read, mm" id="corrected">
        <input id="corrected" name="value" required inputMode="decimal" maxLength={12} autoComplete="off" />
      </Field>
      <Field label="Why (digits exchanged, wrong point, …)" id="reason">
        <input id="reason" name="reason" required maxLength={200} autoComplete="off" />
      </Field>
      <button type="submit" className={button.button}>
        Correct it
      </button>
    </form>
  );
}
