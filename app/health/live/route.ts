export const dynamic = 'force-dynamic';

/** Says that the program runs, whatever its database does. */
export const GET = (): Response => Response.json({ status: 'ok' });
