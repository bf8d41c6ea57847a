import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';

/** Asks for the code twice: what it does cannot be taken back. */
export function RemoveForm() {
  return (
    <form className={form.form} action="/settings/people/remove" method="post">
      <Field label="Code of the person to remove" id="remove-code">
        <input id="remove-code" name="code" required maxLength={80} autoComplete="off" />
      </Field>
      <Field label="The code once more" id="remove-again">
        <input id="remove-again" name="again" required maxLength={80} autoComplete="off" />
      </Field>
      <Field label="Why" id="remove-reason">
        <input id="remove-reason" name="reason" required maxLength={200} autoComplete="off" />
      </Field>
      <button type="submit" className={button.button}>
        Remove for good
      </button>
    </form>
  );
}
