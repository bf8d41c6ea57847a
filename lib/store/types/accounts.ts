import type { Person, Shop } from './shop';

/** Whom an account belongs to. */
export interface AccountHolder {
  shop: Shop;
  person: Person;
  signInName: string;
  secondFactor: boolean;
}

/** One person as the manager sees who can sign in. */
export interface PersonAccount extends Person {
  /** Null where there is no account. */
  signInName: string | null;
  secondFactor: boolean;
  /** Start of the newest session that is still good, or null. */
  signedInAt: number | null;
  /** An invitation that waits to be taken up lasts until then, or null. */
  invitedUntil: number | null;
  /** Removed on request; the row stays under a pseudonym. */
  removed: boolean;
}

/** What a link of invitation is for. */
export interface OpenInvitation {
  shop: string;
  code: string;
  name: string;
  /** Null where the person has no account yet; else the link sets a new password. */
  signInName: string | null;
}

export interface SignedInSession {
  id: string;
  startedAt: number;
  expiresAt: number;
  /** As the browser called itself. */
  browser: string | null;
}
