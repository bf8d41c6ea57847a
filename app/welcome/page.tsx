import { redirect } from 'next/navigation';
import button from '@/app/_look/button.module.css';
import { CredentialsFields } from '@/app/_look/credentials-fields';
import { Field } from '@/app/_look/field';
import { ShopFields } from '@/app/_shop/shop-fields';
import form from '@/app/_look/form.module.css';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { said } from '@/app/_shop/said';
import { firstOf, type Query } from '@/app/_words/address';
import { hasAccounts, isSetUpKey, LIMITS } from '@/lib/identity';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
import { hear } from '@/app/_words/speech';

export const generateMetadata = titled(() => words('welcome')('title'));

export default async function Welcome({ searchParams }: { searchParams: Promise<Query> }) {
  await hear();
  const t = words('welcome');
  if (await hasAccounts()) redirect('/sign-in');
  const query = await searchParams;
  const key = firstOf(query, 'key') ?? '';
  const fault = await said();
  if (!isSetUpKey(key)) {
    return (
      <Page title={t('nobody')}>
        <Note kind={key === '' ? 'plain' : 'fault'}>
          <p>{t('openLink')}</p>
        </Note>
      </Page>
    );
  }
  return (
    <Page title={t('title')} lead={t('lead')}>
      {fault !== null && (
        <Note kind="fault" live>
          <p>{fault}</p>
        </Note>
      )}
      <form className={form.form} action="/welcome/make" method="post">
        <input type="hidden" name="key" value={key} />
        <ShopFields timeZone="UTC" />
        <Field label={t('name')} id="name">
          <input id="name" name="name" required maxLength={80} autoComplete="name" />
        </Field>
        <Field label={t('code')} id="code">
          <input id="code" name="code" required maxLength={20} autoComplete="off" />
        </Field>
        <CredentialsFields signInName="" limits={LIMITS} />
        <button type="submit" className={button.strong}>
          {t('title')}
        </button>
      </form>
    </Page>
  );
}
