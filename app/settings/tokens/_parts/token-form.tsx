import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import { TOKEN_SCOPES } from '@/lib/access';
import { scopeWords } from './scope-words';
import { words } from '@/app/_words/words';

/** A plain form, so that it works without scripts. */
export function TokenForm() {
  const t = words('settings');
  return (
    <form className={form.form} action="/settings/tokens/make" method="post">
      <Field label={t('tokens.form.name')} id="token-name">
        <input id="token-name" name="name" required maxLength={60} autoComplete="off" />
      </Field>
      <fieldset>
        <legend>{t('tokens.form.may')}</legend>
        {TOKEN_SCOPES.map((scope) => (
          <label key={scope} className={form.choice}>
            <input type="checkbox" name={scope} value="yes" /> {scopeWords(scope)}
          </label>
        ))}
      </fieldset>
      <Field label={t('tokens.form.works')} id="token-days">
        <select id="token-days" name="days" defaultValue="365">
          <option value="30">{t('tokens.form.month')}</option>
          <option value="365">{t('tokens.form.year')}</option>
          <option value="0">{t('tokens.form.unlimited')}</option>
        </select>
      </Field>
      <button type="submit" className={button.strong}>
        {t('tokens.form.make')}
      </button>
    </form>
  );
}
