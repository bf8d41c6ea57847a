import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import { LONGEST_PASSWORD, SHORTEST_PASSWORD } from '@/lib/identity';
import { words } from '@/app/_words/words';

export function PasswordForm() {
  const t = words('account');
  return (
    <form className={form.form} action="/account/password" method="post">
      <Field label={t('password.present')} id="present">
        <input
          id="present"
          name="present"
          type="password"
          required
          maxLength={LONGEST_PASSWORD}
          autoComplete="current-password"
        />
      </Field>
      <Field label={t('password.next', { least: SHORTEST_PASSWORD })} id="next">
        <input
          id="next"
          name="next"
          type="password"
          required
          minLength={SHORTEST_PASSWORD}
          maxLength={LONGEST_PASSWORD}
          autoComplete="new-password"
        />
      </Field>
      <button type="submit" className={button.button}>
        {t('password.change')}
      </button>
    </form>
  );
}
