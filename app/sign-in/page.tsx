import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { viewerOrNull } from '@/app/_shop/enter';
import { wayBack } from '@/app/_shop/way-back';
import { firstOf, type Query } from '@/app/_words/address';
import { hasAccounts, LONGEST_NAME, LONGEST_PASSWORD } from '@/lib/identity';
import { demoAccounts } from '@/lib/identity/demo';
import { DemoSignIn } from './_parts/demo-sign-in';
import { refusalWords } from './_parts/refusal-words';

export const metadata: Metadata = { title: 'Sign in' };

export default async function SignIn({ searchParams }: { searchParams: Promise<Query> }) {
  const query = await searchParams;
  const to = wayBack(firstOf(query, 'to'));
  if ((await viewerOrNull()) !== null) redirect(to);
  if (!(await hasAccounts())) redirect('/welcome');
  const refused = refusalWords(firstOf(query, 'refused'), firstOf(query, 'minutes'));
  const demo = await demoAccounts();
  return (
    <Page title="Sign in" lead="Measurements and figures are open to the people of the shop.">
      {refused !== null && (
        <Note kind="fault" live>
          <p>{refused}</p>
        </Note>
      )}
      <form className={form.form} action="/sign-in/try" method="post">
        <input type="hidden" name="to" value={to} />
        <Field label="Sign-in name" id="name">
          <input
            id="name"
            name="name"
            required
            maxLength={LONGEST_NAME}
            autoComplete="username"
            autoCapitalize="none"
            spellCheck={false}
          />
        </Field>
        <Field label="Password" id="password">
          <input
            id="password"
            name="password"
            type="password"
            required
            maxLength={LONGEST_PASSWORD}
            autoComplete="current-password"
          />
        </Field>
        <button type="submit" className={button.strong}>
          Sign in
        </button>
        <p className={form.hint}>
          No sign-in name yet, or the password forgotten: the shop’s manager makes a link for you under
          Settings, People.
        </p>
      </form>
      {demo.length > 0 && (
        <Panel
          id="demo"
          title="Look around in the demo shop"
          note="The shop and everybody in it are invented, and these ways in are open to all."
        >
          <DemoSignIn accounts={demo} to={to} />
        </Panel>
      )}
    </Page>
  );
}
