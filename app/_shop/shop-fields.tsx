import { z } from 'zod';
import { Field } from '@/app/_look/field';
import { words } from '@/app/_words/words';

const line = (most: number) => z.string().trim().min(1).max(most);

/** What `ShopFields` send. */
export const shopFields = { shopName: line(80), timeZone: line(60) };

/** What a shop is called and in which time zone it is, as fields of a form. */
export function ShopFields({ name, timeZone }: { name?: string; timeZone: string }) {
  const t = words('welcome');
  return (
    <>
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
    </>
  );
}
