import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import button from '@/app/_look/button.module.css';
import { CredentialsFields } from '@/app/_look/credentials-fields';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { said } from '@/app/_shop/said';
import { firstOf, type Query } from '@/app/_words/address';
import { hasAccounts, isSetUpKey, LIMITS } from '@/lib/identity';

export const metadata: Metadata = { title: 'Set up the shop' };

export default async function Welcome({ searchParams }: { searchParams: Promise<Query> }) {
  if (await hasAccounts()) redirect('/sign-in');
  const query = await searchParams;
  const key = firstOf(query, 'key') ?? '';
  const fault = await said();
  if (!isSetUpKey(key)) {
    return (
      <Page title="Nobody can sign in yet">
        <Note kind={key === '' ? 'plain' : 'fault'}>
          <p>
            The window in which Rehang was started shows a link that sets up the shop and its manager. Open
            that link.
          </p>
        </Note>
      </Page>
    );
  }
  return (
    <Page
      title="Set up the shop"
      lead="You become its manager: you see everything, invite the others and decide what the shop decides for itself."
    >
      {fault !== null && (
        <Note kind="fault" live>
          <p>{fault}</p>
        </Note>
      )}
      <form className={form.form} action="/welcome/make" method="post">
        <input type="hidden" name="key" value={key} />
        <Field label="Name of the shop" id="shopName">
          <input id="shopName" name="shopName" required maxLength={80} autoComplete="organization" />
        </Field>
        <Field label="Time zone, such as Europe/Zurich" id="timeZone">
          <input id="timeZone" name="timeZone" required maxLength={60} list="zones" defaultValue="UTC" />
        </Field>
        <datalist id="zones">
          {Intl.supportedValuesOf('timeZone').map((zone) => (
            <option key={zone} value={zone} />
          ))}
        </datalist>
        <Field label="Your name" id="name">
          <input id="name" name="name" required maxLength={80} autoComplete="name" />
        </Field>
        <Field label="Your code: short, as it stands in records" id="code">
          <input id="code" name="code" required maxLength={20} autoComplete="off" />
        </Field>
        <CredentialsFields signInName="" limits={LIMITS} />
        <button type="submit" className={button.strong}>
          Set up the shop
        </button>
      </form>
    </Page>
  );
}
