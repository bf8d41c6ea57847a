import Link from 'next/link';
import button from '@/app/_look/button.module.css';
import { CredentialsFields } from '@/app/_look/credentials-fields';
import form from '@/app/_look/form.module.css';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { said } from '@/app/_shop/said';
import { LIMITS, openInvitation } from '@/lib/identity';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
import { hear } from '@/app/_words/speech';

export const generateMetadata = titled(() => words('invitation')('title'));

interface Props {
  params: Promise<{ token: string }>;
}

export default async function Invitation({ params }: Props) {
  await hear();
  const t = words('invitation');
  const { token } = await params;
  const fault = await said();
  const invitation = await openInvitation(token);
  if (invitation === null) {
    return (
      <Page title={t('spent.title')} lead={t('spent.lead')}>
        <p>{t.rich('spent.next', { link: (chunks) => <Link href="/sign-in">{chunks}</Link> })}</p>
      </Page>
    );
  }
  const { shop, name, code, signInName } = invitation;
  const who = name === '' ? code : `${name}, ${code}`;
  return (
    <Page
      title={signInName === null ? t('new.title', { shop }) : t('again.title')}
      lead={signInName === null ? t('new.lead', { who }) : t('again.lead', { who })}
    >
      {fault !== null && (
        <Note kind="fault" live>
          <p>{fault}</p>
        </Note>
      )}
      <form className={form.form} action={`/invitation/${encodeURIComponent(token)}/take`} method="post">
        <CredentialsFields signInName={signInName ?? ''} limits={LIMITS} />
        <button type="submit" className={button.strong}>
          {t('takeUp')}
        </button>
      </form>
    </Page>
  );
}
