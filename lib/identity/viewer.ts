import { accountHolder } from '@/lib/store/accounts';
import type { Person, Role, Shop } from '@/lib/store';
import { auth } from './auth';

/** Somebody who is signed in, and the one shop that is open to them. */
export interface Viewer {
  shop: Shop;
  /** The person's code in that shop. */
  code: string;
  name: string;
  role: Role;
  person: Person;
  signInName: string;
  secondFactor: boolean;
  /** This session, so that the others can be ended. */
  session: string;
}

/** Who sends a request, by its session cookie; null where nobody is signed in. One that was ended is none. */
export async function viewerOf(headers: Headers): Promise<Viewer | null> {
  // Spares strangers' requests the database.
  if (!(headers.get('cookie') ?? '').includes('rehang.session_token')) return null;
  const found = await auth().api.getSession({ headers });
  if (found === null) return null;
  const holder = await accountHolder(found.user.id);
  if (holder === null) return null;
  const { shop, person, signInName, secondFactor } = holder;
  return {
    shop,
    code: person.code,
    name: person.name,
    role: person.role,
    person,
    signInName,
    secondFactor,
    session: found.session.id,
  };
}
