import { getShop } from '@/lib/store';

export const dynamic = 'force-dynamic';

/** Says whether the program runs and reaches its database. */
export async function GET(): Promise<Response> {
  try {
    await getShop();
    return Response.json({ status: 'ok' });
  } catch {
    return Response.json({ status: 'no database' }, { status: 503 });
  }
}
