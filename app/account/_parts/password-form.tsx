import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import { LONGEST_PASSWORD, SHORTEST_PASSWORD } from '@/lib/identity';

export function PasswordForm() {
  return (
    <form className={form.form} action="/account/password" method="post">
      <Field label="Present password" id="present">
        <input
          id="present"
          name="present"
          type="password"
          required
          maxLength={LONGEST_PASSWORD}
          autoComplete="current-password"
        />
      </Field>
      <Field label={`New password, ${SHORTEST_PASSWORD} characters or more`} id="next">
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
        Change it, and sign out everywhere else
      </button>
    </form>
  );
}
