import { isReady } from '@/lib/interface';

export const dynamic = 'force-dynamic';

/** Says whether requests can be served: the database answers, and the program is not about to stop. No more. */
export async function GET(): Promise<Response> {
  return (await isReady())
    ? Response.json({ status: 'ok' })
    : Response.json({ status: 'not ready' }, { status: 503 });
}
