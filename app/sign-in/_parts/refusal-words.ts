import { count } from '@/app/_words/numbers';

/** What is said of a sign-in that did not succeed; never whether the name exists. */
export function refusalWords(why: string | undefined, minutes: string | undefined): string | null {
  switch (why) {
    case undefined:
      return null;
    case 'wait': {
      const wait = Math.min(60, Math.max(1, Math.trunc(Number(minutes ?? '15')) || 15));
      return `Too many attempts. Wait ${count(wait, 'minute')}, then try again.`;
    }
    case 'code':
      return 'That code is not right, or it has run out. Wait for the next one and type it.';
    default:
      return 'The sign-in name or the password is not right.';
  }
}
