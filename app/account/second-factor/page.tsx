import { headers } from 'next/headers';
import Link from 'next/link';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { enter } from '@/app/_shop/enter';
import { said } from '@/app/_shop/said';
import { pendingSecondFactor } from '@/lib/identity';
import { PasswordStep } from './_parts/password-step';
import { ScanStep } from './_parts/scan-step';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';

export const generateMetadata = titled(() => words('account')('secondFactor.title'));

export default async function SecondFactor() {
  const viewer = await enter();
  const t = words('account');
  const pending = await pendingSecondFactor(await headers());
  const told = await said();
  return (
    <Page
      above={<Link href="/account">{t('title')}</Link>}
      title={t('secondFactor.title')}
      lead={t('secondFactor.lead')}
    >
      {told !== null && (
        <Note kind="fault" live>
          <p>{told}</p>
        </Note>
      )}
      {viewer.secondFactor ? (
        <PasswordStep step="drop" label={t('secondFactor.drop')} />
      ) : pending === null ? (
        <PasswordStep step="begin" label={t('secondFactor.begin')} />
      ) : (
        <ScanStep {...pending} />
      )}
    </Page>
  );
}
