import Link from 'next/link';
import button from '@/app/_look/button.module.css';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { enter } from '@/app/_shop/enter';
import { said } from '@/app/_shop/said';
import { sessionsOf } from '@/lib/access';
import { PasswordForm } from './_parts/password-form';
import { SessionTable } from './_parts/session-table';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
import { roleName } from '@/app/_words/people';

export const generateMetadata = titled(() => words('account')('title'));

export default async function AccountPage() {
  const viewer = await enter();
  const t = words('account');
  const [sessions, told] = [await sessionsOf(viewer), await said()];
  return (
    <Page
      title={t('title')}
      lead={t('lead', {
        who: viewer.name === '' ? viewer.code : `${viewer.name}, ${viewer.code}`,
        role: roleName(viewer.role),
        shop: viewer.shop.name,
        signInName: viewer.signInName,
      })}
    >
      {told !== null && (
        <Note live>
          <p>{told}</p>
        </Note>
      )}
      {viewer.shop.demo && (
        <Note>
          <p>{t('demo')}</p>
        </Note>
      )}
      <Panel id="second-factor" title={t('secondFactor.title')} note={t('secondFactor.note')}>
        <p>{viewer.secondFactor ? t('secondFactor.on') : t('secondFactor.off')}</p>
        <p>
          <Link className={button.button} href="/account/second-factor">
            {viewer.secondFactor ? t('secondFactor.takeAway') : t('secondFactor.setUp')}
          </Link>
        </p>
      </Panel>
      <Panel id="password" title={t('password.title')}>
        <PasswordForm />
      </Panel>
      <Panel id="file" title={t('file.title')} note={t('file.note')}>
        <p>
          <a className={button.button} href="/account/export" download>
            {t('file.download')}
          </a>
        </p>
      </Panel>
      <Panel id="sessions" title={t('sessions.title')} note={t('sessions.note')}>
        <SessionTable sessions={sessions} here={viewer.session} timeZone={viewer.shop.timeZone} />
      </Panel>
    </Page>
  );
}
