import type { Metadata } from 'next';
import Link from 'next/link';
import button from '@/app/_look/button.module.css';
import { CredentialsFields } from '@/app/_look/credentials-fields';
import form from '@/app/_look/form.module.css';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { said } from '@/app/_shop/said';
import { LIMITS, openInvitation } from '@/lib/identity';

export const metadata: Metadata = { title: 'Invitation' };

interface Props {
  params: Promise<{ token: string }>;
}

export default async function Invitation({ params }: Props) {
  const { token } = await params;
  const fault = await said();
  const invitation = await openInvitation(token);
  if (invitation === null) {
    return (
      <Page
        title="This link is no longer good"
        lead="Links work once, for three days, and a newer one replaces them."
      >
        <p>
          Ask the shop’s manager for a new one, or <Link href="/sign-in">sign in</Link> if you took it up
          already.
        </p>
      </Page>
    );
  }
  const { shop, name, code, signInName } = invitation;
  return (
    <Page
      title={signInName === null ? `Welcome to ${shop}` : 'Choose a new password'}
      lead={`For ${name === '' ? code : `${name}, ${code}`}. ${
        signInName === null
          ? 'Choose how you sign in from now on.'
          : 'Every device is signed out, and a second factor has to be set up anew.'
      }`}
    >
      {fault !== null && (
        <Note kind="fault" live>
          <p>{fault}</p>
        </Note>
      )}
      <form className={form.form} action={`/invitation/${encodeURIComponent(token)}/take`} method="post">
        <CredentialsFields signInName={signInName ?? ''} limits={LIMITS} />
        <button type="submit" className={button.strong}>
          Take it up
        </button>
      </form>
    </Page>
  );
}
