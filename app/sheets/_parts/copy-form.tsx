import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import { sheetAddress } from '@/app/_words/address';
import { words } from '@/app/_words/words';

export function CopyForm({ sheet }: { sheet: string }) {
  const t = words('sheets');
  return (
    <form className={form.form} action={`${sheetAddress(sheet)}/copy`} method="post">
      <Field label={t('copy.name')} id="copy-name">
        <input id="copy-name" name="name" required maxLength={80} autoComplete="off" />
      </Field>
      <button type="submit" className={button.button}>
        {t('copy.do')}
      </button>
    </form>
  );
}
