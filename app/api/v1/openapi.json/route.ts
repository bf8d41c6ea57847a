import { openApi } from '@/lib/interface';

/** What the interface can do, for programs; it names no data, so it is open to all. */
export const GET = (): Response => Response.json(openApi());
