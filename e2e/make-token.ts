/** Run as a process of its own: makes the database ready, makes a token of the first shop for everything, and prints it. */
import { closeStore, getShop } from '@/lib/store';
import { migrate } from '@/lib/store/migrations/migrate';
import { createToken, TOKEN_SCOPES } from '@/lib/store/tokens';

await migrate();
const { id } = await getShop();
const wanted = { name: 'a test', scopes: TOKEN_SCOPES, expiresAt: null };
process.stdout.write(await createToken(id, wanted, { person: null, via: 'command' }));
await closeStore();
