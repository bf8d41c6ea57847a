import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import { LONGEST_PASSWORD } from '@/lib/identity';
import { words } from '@/app/_words/words';

/** Asks for the password before anything changes. */
export function PasswordStep({ step, label }: { step: 'begin' | 'drop'; label: string }) {
  return (
    <form className={form.form} action="/account/second-factor/step" method="post">
      <input type="hidden" name="step" value={step} />
      <Field label={words('account')('secondFactor.proof')} id="proof">
        <input
          id="proof"
          name="proof"
          type="password"
          required
          maxLength={LONGEST_PASSWORD}
          autoComplete="current-password"
        />
      </Field>
      <button type="submit" className={button.strong}>
        {label}
      </button>
    </form>
  );
}
