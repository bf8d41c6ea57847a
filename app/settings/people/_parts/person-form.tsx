import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import { ROLE_NAMES } from '@/app/_words/people';
import { ROLES } from '@/lib/access';

/** A code that is known is changed, another is added. */
export function PersonForm() {
  return (
    <form className={form.form} action="/settings/people/save" method="post">
      <Field label="Code, as it stands in measurement files" id="code">
        <input id="code" name="code" required maxLength={20} autoComplete="off" />
      </Field>
      <Field label="Name (left empty, a known one stays)" id="name">
        <input id="name" name="name" maxLength={80} autoComplete="off" />
      </Field>
      <Field label="Role" id="role">
        <select id="role" name="role" required defaultValue="technician">
          {ROLES.map((role) => (
            <option key={role} value={role}>
              {ROLE_NAMES[role]}
            </option>
          ))}
        </select>
      </Field>
      <Field label="Works here" id="active">
        <select id="active" name="active" defaultValue="yes">
          <option value="yes">yes</option>
          <option value="no">no longer: signed out at once, the readings stay</option>
        </select>
      </Field>
      <button type="submit" className={button.strong}>
        Keep it
      </button>
    </form>
  );
}
