import type { Credentials } from '@/lib/store/accounts';
import { hashPassword, passwordFault } from './password';
import { isSignInName, signInNameOf } from './sign-in-name';

/** A chosen name and password, ready to be kept; or why they cannot be, as a sentence. */
export async function chooseCredentials(name: string, password: string): Promise<Credentials | string> {
  const signInName = signInNameOf(name);
  if (!isSignInName(signInName))
    return 'The sign-in name has 3 to 30 letters without accents, digits, dots or underscores.';
  const fault = passwordFault(password, signInName);
  return fault ?? { signInName, passwordHash: await hashPassword(password) };
}
