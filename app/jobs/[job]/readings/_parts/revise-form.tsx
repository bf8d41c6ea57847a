import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import { drawnOnce } from '@/app/_look/still';
import { jobAddress } from '@/app/_words/address';
import { dimensionName } from '@/app/_words/dimensions';
import { millimetres, unit } from '@/app/_words/numbers';
import type { ReadingRevision } from '@/lib/access';
import { REASON_LENGTH, whichReading } from '../revise/form';
import { sameReading } from './revision-table';
import { words } from '@/app/_words/words';

interface ReviseFormProps {
  history: readonly ReadingRevision[];
}

/** A plain form, so that it works without scripts. */
export const ReviseForm = drawnOnce(function ReviseForm({ history }: ReviseFormProps) {
  const [first] = history;
  if (first === undefined) return null;
  const latest = history.filter(
    (one) => !history.some((other) => sameReading(one, other) && other.revision > one.revision),
  );
  const t = words('readings');
  return (
    <form className={form.form} action={`${jobAddress(first.job)}/readings/revise`} method="post">
      <Field label={t('form.which')} id="reading">
        <select id="reading" name="reading" required defaultValue="">
          <option value="" disabled>
            {t('form.choose')}
          </option>
          {latest.map((one) => (
            <option key={whichReading(one)} value={whichReading(one)}>
              {t(one.excluded ? 'form.excluded' : 'form.reading', {
                setup: one.setup,
                dimension: dimensionName(one),
                repeat: one.repeat,
                value: millimetres(one.value),
              })}
            </option>
          ))}
        </select>
      </Field>
      <Field label={t('form.what')} id="what">
        <select id="what" name="what" required defaultValue="correct">
          <option value="correct">{t('form.correct')}</option>
          <option value="exclude">{t('form.exclude')}</option>
          <option value="include">{t('form.include')}</option>
        </select>
      </Field>
      <Field label={t('form.value', { unit: unit() })} id="value">
        <input id="value" name="value" inputMode="decimal" maxLength={12} autoComplete="off" />
      </Field>
      <Field label={t('form.why')} id="reason">
        <input id="reason" name="reason" required maxLength={REASON_LENGTH} autoComplete="off" />
      </Field>
      <button type="submit" className={button.strong}>
        {t('form.doIt')}
      </button>
    </form>
  );
});
