/** Run as a process of its own: makes a token of the first shop for everything, and prints it. */
import { closeStore, getShop } from '@/lib/store';
import { createToken, TOKEN_SCOPES } from '@/lib/store/tokens';

const { id } = await getShop();
const wanted = { name: 'a test', scopes: TOKEN_SCOPES, expiresAt: null };
process.stdout.write(await createToken(id, wanted, { person: null, via: 'command' }));
await closeStore();
