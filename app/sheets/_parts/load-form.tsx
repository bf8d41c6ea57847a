import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import { words } from '@/app/_words/words';
import styles from './load-form.module.css';
import { LENGTH_FILE_COLUMNS, POINT_FILE_COLUMNS } from '@/lib/measure/sheet-file';

/** A sheet file or two are read and shown in the form, to be looked at before they are kept. */
export function LoadForm() {
  const t = words('sheets');
  return (
    <>
      <form className={form.form} action="/sheets/new/load" method="post" encType="multipart/form-data">
        <div className={styles.file}>
          <Field label={t('load.file')} id="file">
            <input id="file" name="file" type="file" accept=".csv,text/csv" multiple required />
          </Field>
        </div>
        <button type="submit" className={button.button}>
          {t('load.read')}
        </button>
      </form>
      <details className={styles.format}>
        <summary>{t('load.format')}</summary>
        <p className={form.hint}>{t('load.formatPoints')}</p>
        <p>
          <code>{Object.keys(POINT_FILE_COLUMNS).join(', ')}</code>
        </p>
        <p className={form.hint}>{t('load.formatLengths')}</p>
        <p>
          <code>{Object.keys(LENGTH_FILE_COLUMNS).join(', ')}</code>
        </p>
      </details>
    </>
  );
}
