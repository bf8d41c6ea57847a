import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import { TOKEN_SCOPES } from '@/lib/access';
import { SCOPE_WORDS } from './scope-words';

/** A plain form, so that it works without scripts. */
export function TokenForm() {
  return (
    <form className={form.form} action="/settings/tokens/make" method="post">
      <Field label="Name: which program it is for" id="token-name">
        <input id="token-name" name="name" required maxLength={60} autoComplete="off" />
      </Field>
      <fieldset>
        <legend>It may</legend>
        {TOKEN_SCOPES.map((scope) => (
          <label key={scope} className={form.choice}>
            <input type="checkbox" name={scope} value="yes" /> {SCOPE_WORDS[scope]}
          </label>
        ))}
      </fieldset>
      <Field label="It works" id="token-days">
        <select id="token-days" name="days" defaultValue="365">
          <option value="30">for 30 days</option>
          <option value="365">for a year</option>
          <option value="0">until it is revoked</option>
        </select>
      </Field>
      <button type="submit" className={button.strong}>
        Make it
      </button>
    </form>
  );
}
