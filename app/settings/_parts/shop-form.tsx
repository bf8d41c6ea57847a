import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import styles from '@/app/_look/form.module.css';
import { words } from '@/app/_words/words';

/** What the shop is called and where it is; a plain form, so that it works without scripts. */
export function ShopForm({ name, timeZone }: { name: string; timeZone: string }) {
  const t = words('welcome');
  return (
    <form className={styles.form} action="/settings/shop" method="post">
      <Field label={t('shopName')} id="shopName">
        <input
          id="shopName"
          name="shopName"
          required
          maxLength={80}
          autoComplete="organization"
          defaultValue={name}
        />
      </Field>
      <Field label={t('timeZone')} id="timeZone">
        <input id="timeZone" name="timeZone" required maxLength={60} list="zones" defaultValue={timeZone} />
      </Field>
      <datalist id="zones">
        {Intl.supportedValuesOf('timeZone').map((zone) => (
          <option key={zone} value={zone} />
        ))}
      </datalist>
      <button type="submit" className={button.strong}>
        {words('settings')('shop.set')}
      </button>
    </form>
  );
}
