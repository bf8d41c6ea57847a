import { database } from '@/lib/store/connection/database';

/** Whether anybody at all can sign in. */
export async function hasAccounts(): Promise<boolean> {
  return (await database().user.findFirst({ select: { id: true } })) !== null;
}
