import type { Metadata } from 'next';
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

export const metadata: Metadata = { title: 'People' };

export default async function People() {
  const viewer = await enter();
  const people = await listPeopleAccounts(viewer);
  const told = await said();
  return (
    <Page
      above={<Link href="/settings">Settings</Link>}
      title="People"
      lead="Who belongs to the shop, in which role, and who can sign in. Technicians who measured come with their readings."
    >
      {told !== null && (
        <Note live>
          <p>{told}</p>
        </Note>
      )}
      <Panel
        id="people"
        title="Everybody"
        note="An invitation is a link that you hand over yourself: it works once, for three days. For somebody who can sign in already it sets a new password."
      >
        <PeopleTable people={people} viewer={viewer.code} demo={viewer.shop.demo} />
      </Panel>
      <Panel id="add" title="Add somebody, or change a role">
        <PersonForm />
      </Panel>
      <Panel
        id="remove"
        title="Remove a person"
        note="Name, code and account are gone for good, from notes and records too. The readings stay, under a pseudonym, so that the shop's figures do. Backups made before still hold the names."
      >
        <RemoveForm />
      </Panel>
      <Panel id="roles" title="What each role may">
        <WhoMay />
      </Panel>
    </Page>
  );
}
