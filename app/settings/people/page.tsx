import Link from 'next/link';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { enter } from '@/app/_shop/enter';
import { said } from '@/app/_shop/said';
import { listPeopleAccounts } from '@/lib/access';
import { PeopleTable } from './_parts/people-table';
import { PersonForm } from './_parts/person-form';
import { RemoveForm } from './_parts/remove-form';
import { WhoMay } from './_parts/who-may';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';

export const generateMetadata = titled(() => words('settings')('people.title'));

export default async function People() {
  const viewer = await enter();
  const t = words('settings');
  const people = await listPeopleAccounts(viewer);
  const told = await said();
  return (
    <Page
      above={<Link href="/settings">{t('title')}</Link>}
      title={t('people.title')}
      lead={t('people.lead')}
    >
      {told !== null && (
        <Note live>
          <p>{told}</p>
        </Note>
      )}
      <Panel id="people" title={t('people.all')} note={t('people.allNote')}>
        <PeopleTable people={people} viewer={viewer.code} demo={viewer.shop.demo} />
      </Panel>
      <Panel id="add" title={t('people.add')}>
        <PersonForm />
      </Panel>
      <Panel id="remove" title={t('people.remove')} note={t('people.removeNote')}>
        <RemoveForm />
      </Panel>
      <Panel id="roles" title={t('people.whoMay')}>
        <WhoMay />
      </Panel>
    </Page>
  );
}
