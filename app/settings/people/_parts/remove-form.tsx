import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import { words } from '@/app/_words/words';

/** Asks for the code twice: what it does cannot be taken back. */
export function RemoveForm() {
  const t = words('settings');
  return (
    <form className={form.form} action="/settings/people/remove" method="post">
      <Field label={t('people.removal.code')} id="remove-code">
        <input id="remove-code" name="code" required maxLength={80} autoComplete="off" />
      </Field>
      <Field label={t('people.removal.again')} id="remove-again">
        <input id="remove-again" name="again" required maxLength={80} autoComplete="off" />
      </Field>
      <Field label={t('people.removal.why')} id="remove-reason">
        <input id="remove-reason" name="reason" required maxLength={200} autoComplete="off" />
      </Field>
      <button type="submit" className={button.button}>
        {t('people.removal.remove')}
      </button>
    </form>
  );
}
