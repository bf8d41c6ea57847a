import { useState, type SubmitEvent } from 'react';
import { useTranslations } from 'use-intl/react';
import button from '@/app/_look/button.module.css';
import type { EntryBody, Prompt } from '@/lib/bay';
import { placeName } from './names';
import { backToNow } from './use-focus';
import styles from './prompt.module.css';

/** Leaves out the place or the step that is asked for now, with a reason that the record shows. */
export function LeaveForm({
  prompt,
  enter,
}: {
  prompt: Prompt;
  enter: (bodies: EntryBody[]) => Promise<void>;
}) {
  const t = useTranslations('bay');
  const [fault, setFault] = useState<string | null>(null);
  if (prompt.do === 'finish') return <p>{t('leave.nothing')}</p>;
  const { step } = prompt;
  const place = prompt.do === 'check' ? null : prompt.place;

  const submit = async (event: SubmitEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = event.currentTarget;
    const fields = new FormData(form);
    const given = fields.get('reason');
    const reason = typeof given === 'string' ? given.trim() : '';
    if (reason === '') return setFault(t('leave.needs'));
    const whole = place === null || fields.get('what') === 'step';
    await enter([{ kind: 'skip', step, place: whole ? null : place.key, reason }]);
    form.reset();
    form.closest('details')?.removeAttribute('open');
    setFault(null);
    backToNow();
  };

  return (
    <form className={styles.fields} data-typing onSubmit={(event) => void submit(event)} noValidate>
      <fieldset className={styles.choices}>
        <legend>{t('leave.what')}</legend>
        {place !== null && (
          <label>
            <input type="radio" name="what" value="place" defaultChecked />
            {t('leave.place', { name: placeName(place) })}
          </label>
        )}
        <label>
          <input type="radio" name="what" value="step" defaultChecked={place === null} />
          {t('leave.step', { step: t(`steps.${step}`) })}
        </label>
      </fieldset>
      <div className={styles.field}>
        <label htmlFor="leave-reason">{t('leave.reason')}</label>
        <input id="leave-reason" name="reason" list="leave-reasons" maxLength={300} autoComplete="off" />
        <datalist id="leave-reasons">
          {t('leave.reasons')
            .split('|')
            .map((reason) => (
              <option key={reason} value={reason} />
            ))}
        </datalist>
      </div>
      <button type="submit" className={button.button}>
        {t('leave.do')}
      </button>
      <p role="alert" className={styles.fault}>
        {fault}
      </p>
    </form>
  );
}
