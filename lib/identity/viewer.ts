import { sessionHolder } from '@/lib/store/accounts';
import type { Person, Role, Shop } from '@/lib/store';
import { sessionToken } from './session-token';

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
  const token = sessionToken(headers.get('cookie') ?? '');
  // Spares strangers' requests the database.
  const holder = token === null ? null : await sessionHolder(token);
  if (holder === null) return null;
  const { shop, person, signInName, secondFactor, session } = holder;
  return {
    shop,
    code: person.code,
    name: person.name,
    role: person.role,
    person,
    signInName,
    secondFactor,
    session,
  };
}
