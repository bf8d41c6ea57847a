import { hashPassword } from 'better-auth/crypto';

export const SHORTEST_PASSWORD = 12;
export const LONGEST_PASSWORD = 128;

/** Different characters that a password has at least: 'aaaaaaaaaa' and '1212121212' are guessed first. */
const LEAST_DIFFERENT = 5;

/** Beginnings of what is tried first everywhere. */
const TRIED_FIRST = ['password', '1234567', 'qwerty', 'letmein', 'iloveyou', 'welcome', 'abcdefg', 'rehang'];

/** Why a password is refused, as a sentence; null where it may be used. */
export function passwordFault(password: string, signInName: string): string | null {
  if (password.length < SHORTEST_PASSWORD)
    return `The password has ${password.length} characters; it needs ${SHORTEST_PASSWORD} or more. Three or four words do well.`;
  if (password.length > LONGEST_PASSWORD)
    return `The password has more than ${LONGEST_PASSWORD} characters; use a shorter one.`;
  const small = password.toLowerCase();
  if (new Set(small).size < LEAST_DIFFERENT)
    return 'The password repeats the same few characters; use a more varied one.';
  if (signInName !== '' && small.includes(signInName))
    return 'The password holds the sign-in name; leave that out.';
  if (TRIED_FIRST.some((start) => small.startsWith(start)))
    return 'The password begins like the ones that are tried first everywhere; use another.';
  return null;
}

/** As it is kept: scrypt with a salt of its own. */
export { hashPassword };
