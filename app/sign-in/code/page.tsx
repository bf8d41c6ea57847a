import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { wayBack } from '@/app/_shop/way-back';
import { firstOf, type Query } from '@/app/_words/address';
import { refusalWords } from '../_parts/refusal-words';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
import { hear } from '@/app/_words/speech';

export const generateMetadata = titled(() => words('signIn')('code.title'));

export default async function SecondStep({ searchParams }: { searchParams: Promise<Query> }) {
  await hear();
  const t = words('signIn');
  const query = await searchParams;
  const refused = refusalWords(firstOf(query, 'refused'), firstOf(query, 'minutes'));
  return (
    <Page title={t('code.title')} lead={t('code.lead')}>
      {refused !== null && (
        <Note kind="fault" live>
          <p>{refused}</p>
        </Note>
      )}
      <form className={form.form} action="/sign-in/code/try" method="post">
        <input type="hidden" name="to" value={wayBack(firstOf(query, 'to'))} />
        <Field label={t('code.code')} id="code">
          <input id="code" name="code" required maxLength={30} autoComplete="one-time-code" />
        </Field>
        <button type="submit" className={button.strong}>
          {t('signIn')}
        </button>
      </form>
    </Page>
  );
}
