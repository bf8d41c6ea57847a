import type { Viewer } from '@/lib/identity';
import * as store from '@/lib/store';
import * as accounts from '@/lib/store/accounts';
import type { PersonAccount, SignedInSession } from '@/lib/store';
import { actorOf } from './actor';
import { demand, may } from './may';
import { seesHand } from './sees-hand';

/** Everybody whose figures the viewer may see, by code. */
export async function listPeople(viewer: Viewer): Promise<store.Person[]> {
  const people = await store.listPeople(viewer.shop.id);
  return may(viewer, 'see everybody’s figures') ? people : people.filter(({ code }) => code === viewer.code);
}

export async function getPerson(viewer: Viewer, code: string): Promise<store.Person | null> {
  if (!seesHand(viewer, code)) return null;
  return store.getPerson(viewer.shop.id, code);
}

/** Who can sign in, and how. @throws Refused */
export async function listPeopleAccounts(viewer: Viewer): Promise<PersonAccount[]> {
  demand(viewer, 'manage people');
  return accounts.listPeopleAccounts(viewer.shop.id);
}

/**
 * Adds a person, or changes role and state of one. Somebody who no longer works here is signed out at once.
 * @throws Refused; RangeError where nobody would be left to manage the shop.
 */
export async function savePerson(viewer: Viewer, person: store.Person): Promise<void> {
  demand(viewer, 'manage people');
  const people = await store.listPeople(viewer.shop.id);
  const managers = people.filter(
    ({ code, role, active }) => code !== person.code && role === 'manager' && active,
  );
  if (managers.length === 0 && !(person.role === 'manager' && person.active))
    throw new RangeError('Nobody would be left to manage the shop. Make somebody else a manager first.');
  await store.savePeople(viewer.shop.id, [person], actorOf(viewer));
  if (!person.active) await accounts.endSessions(viewer.shop.id, person.code, {}, actorOf(viewer));
}

/** The secret part of a link by which one person chooses a sign-in name and password. @throws Refused */
export async function invite(viewer: Viewer, code: string): Promise<string> {
  demand(viewer, 'manage people');
  return accounts.invite(viewer.shop.id, code, actorOf(viewer));
}

/** The viewer's own sessions. */
export const sessionsOf = (viewer: Viewer): Promise<SignedInSession[]> =>
  accounts.sessionsOf(viewer.shop.id, viewer.code);

/** Ends one of the viewer's own sessions, or all but this one. */
export const endOwnSessions = (viewer: Viewer, only: string | undefined): Promise<number> =>
  accounts.endSessions(
    viewer.shop.id,
    viewer.code,
    only === undefined ? { except: viewer.session } : { only },
    actorOf(viewer),
  );

/** Signs somebody out on every device. @throws Refused */
export async function endSessionsOf(viewer: Viewer, code: string): Promise<number> {
  demand(viewer, 'manage people');
  return accounts.endSessions(viewer.shop.id, code, {}, actorOf(viewer));
}
