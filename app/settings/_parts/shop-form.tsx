import button from '@/app/_look/button.module.css';
import styles from '@/app/_look/form.module.css';
import { ShopFields } from '@/app/_shop/shop-fields';
import { words } from '@/app/_words/words';

/** Changes what the shop is called and where it is; a plain form, so that it works without scripts. */
export function ShopForm({ name, timeZone }: { name: string; timeZone: string }) {
  return (
    <form className={styles.form} action="/settings/shop" method="post">
      <ShopFields name={name} timeZone={timeZone} />
      <button type="submit" className={button.strong}>
        {words('settings')('shop.set')}
      </button>
    </form>
  );
}
