import { prismaAdapter } from 'better-auth/adapters/prisma';
import { database } from '@/lib/store/connection/database';
import { databaseUrl } from '@/lib/store/connection/database-url';

/** What the sign-in library keeps its users and sessions in, and the address of the database it belongs to. */
export function signInTables() {
  const url = databaseUrl();
  return {
    address: url.engine === 'sqlite' ? url.path : url.url,
    adapter: prismaAdapter(database(), { provider: url.engine }),
  };
}
