import { ROLES, type Role } from '@/lib/store';
import { demoSignInNames } from '@/lib/store/accounts';

/** Of every account of the invented shop; public, and of no use anywhere else. */
export const DEMO_PASSWORD = 'hang it again and read';

export interface DemoAccount {
  signInName: string;
  password: string;
  role: Role;
  name: string;
}

/** The ways into the demo shop, one for each kind of user, the manager's first; none where the database has no demo shop. */
export async function demoAccounts(): Promise<DemoAccount[]> {
  const accounts = (await demoSignInNames()).map((account) => ({ ...account, password: DEMO_PASSWORD }));
  return accounts.sort((a, b) => ROLES.indexOf(b.role) - ROLES.indexOf(a.role));
}
