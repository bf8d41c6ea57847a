import type { Metadata } from 'next';
import Link from 'next/link';
import button from '@/app/_look/button.module.css';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { enter } from '@/app/_shop/enter';
import { said } from '@/app/_shop/said';
import { ROLE_NAMES } from '@/app/_words/people';
import { sessionsOf } from '@/lib/access';
import { PasswordForm } from './_parts/password-form';
import { SessionTable } from './_parts/session-table';

export const metadata: Metadata = { title: 'My account' };

export default async function AccountPage() {
  const viewer = await enter();
  const [sessions, told] = [await sessionsOf(viewer), await said()];
  return (
    <Page
      title="My account"
      lead={`${viewer.name === '' ? viewer.code : `${viewer.name}, ${viewer.code}`}: ${ROLE_NAMES[viewer.role]} of ${viewer.shop.name}, signed in as ${viewer.signInName}.`}
    >
      {told !== null && (
        <Note live>
          <p>{told}</p>
        </Note>
      )}
      {viewer.shop.demo && (
        <Note>
          <p>This is the demo shop: its passwords are public and cannot be changed.</p>
        </Note>
      )}
      <Panel
        id="second-factor"
        title="Second factor"
        note="Beside the password, a code that an authenticator on your phone shows anew every half minute."
      >
        <p>{viewer.secondFactor ? 'It is asked for when you sign in.' : 'It is not set up.'}</p>
        <p>
          <Link className={button.button} href="/account/second-factor">
            {viewer.secondFactor ? 'Take it away' : 'Set it up'}
          </Link>
        </p>
      </Panel>
      <Panel id="password" title="Password">
        <PasswordForm />
      </Panel>
      <Panel
        id="file"
        title="What the shop holds about me"
        note="Everything that concerns you in one file: readings, records, sessions, and who changed what."
      >
        <p>
          <a className={button.button} href="/account/export" download>
            Download my file
          </a>
        </p>
      </Panel>
      <Panel
        id="sessions"
        title="Where you are signed in"
        note="A session ends by itself after 12 hours. One that you do not know: end it and change the password."
      >
        <SessionTable sessions={sessions} here={viewer.session} timeZone={viewer.shop.timeZone} />
      </Panel>
    </Page>
  );
}
