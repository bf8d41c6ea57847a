import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import { roleName } from '@/app/_words/people';
import { ROLES } from '@/lib/access';
import { words } from '@/app/_words/words';

/** A code that is known is changed, another is added. */
export function PersonForm() {
  const t = words('settings');
  return (
    <form className={form.form} action="/settings/people/save" method="post">
      <Field label={t('people.form.code')} id="code">
        <input id="code" name="code" required maxLength={20} autoComplete="off" />
      </Field>
      <Field label={t('people.form.name')} id="name">
        <input id="name" name="name" maxLength={80} autoComplete="off" />
      </Field>
      <Field label={t('people.form.role')} id="role">
        <select id="role" name="role" required defaultValue="technician">
          {ROLES.map((role) => (
            <option key={role} value={role}>
              {roleName(role)}
            </option>
          ))}
        </select>
      </Field>
      <Field label={t('people.form.active')} id="active">
        <select id="active" name="active" defaultValue="yes">
          <option value="yes">{t('people.form.yes')}</option>
          <option value="no">{t('people.form.no')}</option>
        </select>
      </Field>
      <button type="submit" className={button.strong}>
        {t('people.form.keep')}
      </button>
    </form>
  );
}
