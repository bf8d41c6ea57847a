import type { Metadata } from 'next';
import { headers } from 'next/headers';
import Link from 'next/link';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { enter } from '@/app/_shop/enter';
import { said } from '@/app/_shop/said';
import { pendingSecondFactor } from '@/lib/identity';
import { PasswordStep } from './_parts/password-step';
import { ScanStep } from './_parts/scan-step';

export const metadata: Metadata = { title: 'Second factor' };

export default async function SecondFactor() {
  const viewer = await enter();
  const pending = await pendingSecondFactor(await headers());
  const told = await said();
  return (
    <Page
      above={<Link href="/account">My account</Link>}
      title="Second factor"
      lead="Whoever learns your password still cannot sign in without your phone."
    >
      {told !== null && (
        <Note kind="fault" live>
          <p>{told}</p>
        </Note>
      )}
      {viewer.secondFactor ? (
        <PasswordStep step="drop" label="Take the second factor away" />
      ) : pending === null ? (
        <PasswordStep step="begin" label="Begin" />
      ) : (
        <ScanStep {...pending} />
      )}
    </Page>
  );
}
