import { redirect } from 'next/navigation';
import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { viewerOrNull } from '@/app/_shop/enter';
import { ForgetOnDevice } from '@/app/bay/_parts/forget-on-device';
import { wayBack } from '@/app/_shop/way-back';
import { firstOf, type Query } from '@/app/_words/address';
import { hasAccounts, LONGEST_NAME, LONGEST_PASSWORD } from '@/lib/identity';
import { demoAccounts } from '@/lib/identity/demo';
import { DemoSignIn } from './_parts/demo-sign-in';
import { refusalWords } from './_parts/refusal-words';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
import { hear } from '@/app/_words/speech';

export const generateMetadata = titled(() => words('signIn')('title'));

export default async function SignIn({ searchParams }: { searchParams: Promise<Query> }) {
  await hear();
  const t = words('signIn');
  const query = await searchParams;
  const to = wayBack(firstOf(query, 'to'));
  if ((await viewerOrNull()) !== null) redirect(to);
  if (!(await hasAccounts())) redirect('/welcome');
  const refused = refusalWords(firstOf(query, 'refused'), firstOf(query, 'minutes'));
  const demo = await demoAccounts();
  return (
    <Page title={t('title')} lead={t('lead')}>
      <ForgetOnDevice />
      {refused !== null && (
        <Note kind="fault" live>
          <p>{refused}</p>
        </Note>
      )}
      <form className={form.form} action="/sign-in/try" method="post">
        <input type="hidden" name="to" value={to} />
        <Field label={t('name')} id="name">
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
        <Field label={t('password')} id="password">
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
          {t('signIn')}
        </button>
        <p className={form.hint}>{t('hint')}</p>
      </form>
      {demo.length > 0 && (
        <Panel id="demo" title={t('demo.title')} note={t('demo.note')}>
          <DemoSignIn accounts={demo} to={to} />
        </Panel>
      )}
    </Page>
  );
}
